#!/bin/sh
# Verifies the seals of a trial with standard tools alone: sh verify.sh FOLDER FINGERPRINT
# The fingerprint is the one that was published, whole or its first twenty digits. Ends with 0 where it is that of a seal and each
# seal is named by the next, else with 1.
set -e
cd "$1"
wanted=$(printf '%s' "$2" | tr -d ' -' | tr 'A-F' 'a-f')
if [ "${#wanted}" -lt 20 ]; then
    echo "give a fingerprint of at least twenty digits"
    exit 1
fi
found=1
number=1
before=
while [ -f "seal-$number.json" ]; do
    print=$(sha256sum "seal-$number.json" | cut -d ' ' -f 1)
    echo "seal-$number.json $print"
    if [ -n "$before" ]; then
        if grep -q "\"seal before\": \"$before\"" "seal-$number.json"; then
            echo "seal-$number.json follows seal-$((number - 1)).json"
        else
            echo "seal-$((number - 1)).json was changed after seal-$number.json was made"
            exit 1
        fi
    fi
    case $print in
        "$wanted"*) found=0 ;;
    esac
    before=$print
    number=$((number + 1))
done
[ "$found" = 0 ] && echo "the fingerprint is that of a seal" || echo "the fingerprint is that of no seal"
exit "$found"
