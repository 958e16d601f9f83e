#!/usr/bin/env bash
# Installs the independent programs that the outside checks ask: some from Debian, some into .outside/.
# What can't be had is named and does not stop the script; its checks then say that they did not run.
set -u
cd "$(dirname "$0")/.." || exit 1
mkdir -p .outside

cannot() { echo "cannot be had here: $1"; }

debian() { # PROGRAM PACKAGE
  command -v "$1" >/dev/null 2>&1 && return 0
  if [ ! -e .outside/.apt-updated ]; then
    apt-get update -qq >/dev/null 2>&1 && touch .outside/.apt-updated
  fi
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq "$2" >/dev/null 2>&1
  command -v "$1" >/dev/null 2>&1 || cannot "$1 ($2)"
}

rm -f .outside/.apt-updated
debian openssl openssl
debian pdfsig poppler-utils
debian pdfdetach poppler-utils
debian qpdf qpdf
debian exiftool libimage-exiftool-perl
debian script bsdutils
debian soffice libreoffice-calc
debian chromium chromium
# The same program has another name since libheif 1.18.
command -v heif-dec >/dev/null 2>&1 || debian heif-convert libheif-examples

if ! .outside/pyhanko/bin/pyhanko --version >/dev/null 2>&1; then
  rm -rf .outside/pyhanko
  python3 -m venv .outside/pyhanko >/dev/null 2>&1 &&
    .outside/pyhanko/bin/pip install -q --disable-pip-version-check pyhanko==0.38.0 pyhanko-cli==0.6.0 >/dev/null 2>&1
  .outside/pyhanko/bin/pyhanko --version >/dev/null 2>&1 || cannot pyHanko
fi

if ! .outside/bagit/bin/bagit.py --version >/dev/null 2>&1; then
  rm -rf .outside/bagit
  # pkg_resources, which bagit 1.8 asks for, left setuptools with version 81.
  python3 -m venv .outside/bagit >/dev/null 2>&1 &&
    .outside/bagit/bin/pip install -q --disable-pip-version-check 'setuptools<81' bagit==1.8.1 >/dev/null 2>&1
  .outside/bagit/bin/bagit.py --version >/dev/null 2>&1 || cannot bagit-python
fi

if ! .outside/scipy/bin/python -c 'import scipy' >/dev/null 2>&1; then
  rm -rf .outside/scipy
  python3 -m venv .outside/scipy >/dev/null 2>&1 &&
    .outside/scipy/bin/pip install -q --disable-pip-version-check scipy==1.16.3 >/dev/null 2>&1
  .outside/scipy/bin/python -c 'import scipy' >/dev/null 2>&1 || cannot SciPy
fi

# Pictures with content credentials, sound and broken, by the makers of the specification.
[ -d .outside/c2pa/image ] || git clone -q --depth 1 https://github.com/c2pa-org/public-testfiles .outside/c2pa >/dev/null 2>&1
[ -d .outside/c2pa/image ] || cannot "C2PA's public test files"

if ! .outside/pandas/bin/python -c 'import pandas' >/dev/null 2>&1; then
  rm -rf .outside/pandas
  python3 -m venv .outside/pandas >/dev/null 2>&1 &&
    .outside/pandas/bin/pip install -q --disable-pip-version-check pandas==2.3.3 >/dev/null 2>&1
  .outside/pandas/bin/python -c 'import pandas' >/dev/null 2>&1 || cannot pandas
fi

# npm's package of this name brings the program.
if ! .outside/node24/node_modules/node/bin/node --version >/dev/null 2>&1; then
  npm install --silent --no-audit --no-fund --prefix .outside/node24 node@24 >/dev/null 2>&1
  .outside/node24/node_modules/node/bin/node --version >/dev/null 2>&1 || cannot "Node 24"
fi

# The validator is built once from tests/outside/verapdf with the veraPDF library from Maven Central.
source=tests/outside/verapdf
built=.outside/verapdf/validate-pdfa.jar
if [ ! -e "$built" ] || [ "$source/pom.xml" -nt "$built" ] || [ "$source/src/main/java/ValidatePdfA.java" -nt "$built" ]; then
  if command -v mvn >/dev/null 2>&1; then mvn -q -B -f "$source/pom.xml" package >/dev/null 2>&1; fi
  [ -e "$built" ] || cannot veraPDF
fi
exit 0
