"""Prints frames signed by jupyter_client, to check our signing against: /usr/bin/python3 signatures.py > signatures.csv"""
import csv
import sys

import jupyter_client
from jupyter_client.session import Session

cases = [
    ("a0436f6c-1916-498b-8eb9-e81ab9368e84", b'{"msg_id":"1","msg_type":"kernel_info_request"}', b"{}", b"{}", b"{}"),
    ("key", '{"msg_id":"2","username":"J\u00f6rn"}'.encode(), b'{"msg_id":"1"}', b'{"tags":[]}', '{"code":"\u00bd \U0001F6E2"}'.encode()),
    ("k" * 200, b"", b"", b"", b""),
]
print(f"# Python {sys.version.split()[0]}, jupyter_client {jupyter_client.__version__}")
out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["key", "header", "parent", "metadata", "content", "signature"])
for key, *frames in cases:
    session = Session(key=key.encode(), signature_scheme="hmac-sha256")
    out.writerow([key, *[f.hex() for f in frames], session.sign(frames).decode()])
