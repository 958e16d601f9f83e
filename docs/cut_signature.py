"""Cuts a signed PDF into what is signed and the signature.

    python3 cut_signature.py dossier.pdf covered.bin signature.der
"""

import re
import sys

with open(sys.argv[1], "rb") as file:
    pdf = file.read()
# Evidence inside may hold such words too: the signature is where the numbers fit the file.
found = [
    [int(number) for number in match.groups()]
    for match in re.finditer(rb"/ByteRange ?\[ ?(\d+) (\d+) (\d+) (\d+) *\]", pdf)
]
ranges = [r for r in found if r[0] == 0 and r[1] > 0 and r[2] + r[3] == len(pdf)]
if len(ranges) != 1:
    sys.exit("there is not exactly one signature over the whole file")
_, end, start, _ = ranges[0]
if pdf[end : end + 1] != b"<" or pdf[start - 1 : start] != b">":
    sys.exit("the signature leaves out more than its own value")
value = bytes.fromhex(pdf[end + 1 : start - 1].decode("ascii"))
# DER says its own length (X.690, section 8.1.3); zeros fill the rest of the room.
count = value[1] & 0x7F
length = 2 + count + int.from_bytes(value[2 : 2 + count], "big")
if any(value[length:]):
    sys.exit("something stands after the signature in its room")
with open(sys.argv[2], "wb") as covered:
    covered.write(pdf[:end] + pdf[start:])
with open(sys.argv[3], "wb") as signature:
    signature.write(value[:length])
print(f"{end + len(pdf) - start} of {len(pdf)} bytes are signed")
