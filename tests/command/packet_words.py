"""Everything that somebody could read in the files of a packet, as text: bytes as they are, members of a spreadsheet, rows
of a GeoPackage, words, facts and unpacked streams of a PDF. For the test of what each reader may know.

    packet_words.py FOLDER
"""

import os
import re
import sqlite3
import subprocess
import sys
import zipfile
import zlib


def pdf_words(path):
    yield subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, check=True).stdout
    yield subprocess.run(["pdftotext", "-raw", path, "-"], capture_output=True, check=True).stdout
    yield subprocess.run(["pdfinfo", path], capture_output=True, check=True).stdout.replace(path.encode(), b"")
    with open(path, "rb") as file:
        whole = file.read()
    # Texts of the document's facts are UTF-16.
    for text in re.findall(rb"\(\xfe\xff(.*?)\)", whole, re.S):
        yield text.decode("utf-16-be", "replace").encode()
    for stream in re.findall(rb"stream\r?\n(.*?)endstream", whole, re.S):
        try:
            yield zlib.decompress(stream)
        except zlib.error:
            yield stream


def sheet_words(path):
    with zipfile.ZipFile(path) as archive:
        yield archive.comment
        for member in archive.infolist():
            yield member.filename.encode()
            yield member.comment
            yield member.extra
            yield archive.read(member)


def layer_words(path):
    for line in sqlite3.connect(path).iterdump():
        yield line.encode()


def main():
    count = 0
    for name in sorted(os.listdir(sys.argv[1])):
        path = os.path.join(sys.argv[1], name)
        with open(path, "rb") as file:
            parts = [name.encode(), file.read()]
        more = {".pdf": pdf_words, ".xlsx": sheet_words, ".gpkg": layer_words}.get(os.path.splitext(name)[1])
        if more:
            parts += more(path)
        for part in parts:
            sys.stdout.buffer.write(part + b"\n")
        count += 1
    if count < 6:
        sys.exit("a packet has more files than these")


main()
