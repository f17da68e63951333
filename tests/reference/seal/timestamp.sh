#!/bin/sh
# A time-stamp reply (RFC 3161) by OpenSSL for the bytes of seal.txt, and the certificate of its invented authority.
# Run once in an empty folder; what it made stands beside this script. Keys are thrown away, so a second run makes others.
set -e
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
cd "$work"
openssl version > version.txt
printf 'What was fixed before pouring: an invented seal.\n' > seal.txt
cat > tsa.cnf <<CNF
[ tsa ]
default_tsa = authority
[ authority ]
serial = $work/serial
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256
accuracy = secs:1
ess_cert_id_alg = sha256
[ req ]
distinguished_name = name
[ name ]
[ extensions ]
extendedKeyUsage = critical,timeStamping
keyUsage = critical,digitalSignature
CNF
echo 01 > serial
openssl req -x509 -newkey rsa:2048 -nodes -keyout key.pem -out authority.pem -days 36500 -subj "/CN=An invented time authority" -config tsa.cnf -extensions extensions
openssl ts -query -data seal.txt -sha256 -no_nonce -out bare.tsq
openssl ts -query -data seal.txt -sha256 -no_nonce -cert -out full.tsq
openssl ts -reply -config tsa.cnf -queryfile bare.tsq -signer authority.pem -inkey key.pem -out without-certificate.tsr
openssl ts -reply -config tsa.cnf -queryfile full.tsq -signer authority.pem -inkey key.pem -out with-certificate.tsr
openssl ts -verify -in with-certificate.tsr -data seal.txt -CAfile authority.pem
cp version.txt seal.txt authority.pem without-certificate.tsr with-certificate.tsr "$here"
rm -r "$work"
