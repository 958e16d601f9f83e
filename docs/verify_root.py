"""Recomputes the tree hash of a record from its ledger (RFC 9162, section 2.1.1).

    python3 verify_root.py ledger.jsonl [SIZE]

Prints the number of entries and the tree hash over them; with SIZE, over the
first SIZE entries, to compare with a fingerprint that was received earlier.
Each line of the ledger is one entry. In a copy that leaves entries out, a line
{"leaf":"..."} stands in the place of each and holds its leaf hash.
"""

import hashlib
import re
import sys

LEFT_OUT = re.compile(rb'\{"leaf":"([0-9a-f]{64})"\}')


def leaf_hash(line):
    left_out = LEFT_OUT.fullmatch(line)
    if left_out:
        return bytes.fromhex(left_out.group(1).decode())
    return hashlib.sha256(b"\x00" + line).digest()


def tree_hash(leaves):
    if len(leaves) == 0:
        return hashlib.sha256().digest()
    if len(leaves) == 1:
        return leaves[0]
    split = 1
    while split * 2 < len(leaves):
        split *= 2
    left, right = tree_hash(leaves[:split]), tree_hash(leaves[split:])
    return hashlib.sha256(b"\x01" + left + right).digest()


with open(sys.argv[1], "rb") as ledger:
    lines = ledger.read().split(b"\n")
if lines.pop() != b"":
    sys.exit("the last line is cut off")
size = int(sys.argv[2]) if len(sys.argv) > 2 else len(lines)
if size > len(lines):
    sys.exit(f"there are only {len(lines)} entries")
print(size, tree_hash([leaf_hash(line) for line in lines[:size]]).hex())
