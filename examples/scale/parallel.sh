#!/bin/sh
# Splits one file over the cores of this machine with GNU parallel, then joins the shares.
# usage: sh parallel.sh evening.csv evening 4
# Every share writes into the same folder under its own lock and its own manifest. A share that was stopped is
# started again by the same command: --resume-failed repeats only those, and letters already made are kept.
# One core makes letters as fast as it can; more shares than cores gain nothing.
set -eu
file=$1 folder=$2 shares=$3
mkdir -p "$folder"

# Status 1 means that some are to be phoned or to be fixed: a finished share, not a failed one.
share='ironleaf mailing "$1" --out "$2" --config clinic.json --shard "$3/$4" || [ $? -eq 1 ]'
seq "$shares" | parallel --joblog "$folder/shares.log" --resume-failed -q \
  sh -c "$share" share "$file" "$folder" {} "$shares"

# Joins them: reads all manifests, makes nothing again, and writes calls.csv and to-fix.csv of the whole file.
ironleaf mailing "$file" --out "$folder" --config clinic.json || [ $? -eq 1 ]
ironleaf verify "$folder"
