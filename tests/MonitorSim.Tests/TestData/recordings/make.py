"""Writes recording.csv again as HDF5 and as MAT 7.3, with h5py (Debian's python3-h5py 3.7). Run it in this folder."""
import csv
import h5py
import numpy as np

with open("recording.csv", newline="") as text:
    rows = list(csv.DictReader(text))
numbers = {name: np.array([float(row[name] or "nan") for row in rows]) for name in ("time", "speed", "position [mm]")}
count = np.array([int(row["count"]) for row in rows], dtype="i4")
gate = np.array([row["gate"] == "true" for row in rows])
mode = [row["mode"] for row in rows]

with h5py.File("h5py.h5", "w") as file:
    for name, values in numbers.items():
        file[name] = values
    file["speed"].attrs["units"] = "mm/s"
    file["count"], file["gate"], file["mode"] = count, gate, np.array(mode, dtype=object)
    file["matrix"], file["rate"] = np.zeros((len(rows), 3)), 250.0

with h5py.File("h5py-chunked.h5", "w", libver="latest") as file:
    group = file.create_group("run/7")
    for name, values in numbers.items():
        group.create_dataset(name, data=values.reshape(-1, 1), chunks=(8, 1), compression="gzip", shuffle=True, fletcher32=True)
    group["count"], group["gate"], group["mode"] = count.astype("i8"), gate, np.array(mode, dtype="S8")

# As MATLAB lays its files out: a header of text, row or column vectors, classes as attributes, what belongs to cells aside.
with h5py.File("matlab73.mat", "w", userblock_size=512) as file:
    for name, values in numbers.items():
        file[name] = values.reshape(1, -1)
        file[name].attrs["MATLAB_class"] = np.bytes_("double")
    file["count"] = count.reshape(1, -1)
    file["gate"] = gate.astype("u1").reshape(1, -1)
    file["gate"].attrs["MATLAB_class"] = np.bytes_("logical")
    file["title"] = np.array([[ord(letter)] for letter in "slab saw"], dtype="u2")
    file["title"].attrs["MATLAB_class"] = np.bytes_("char")
    file.create_group("#refs#")["a"] = numbers["time"]
with open("matlab73.mat", "r+b") as file:
    file.write(b"MATLAB 7.3 MAT-file, Platform: none, HDF5 schema 1.00 .".ljust(116) + bytes(8) + b"\x00\x02IM" + bytes(384))

# What is not read: values in another file, numbers with the high byte first, a filter of its own.
with h5py.File("h5py-unreadable.h5", "w") as file:
    file["time"] = numbers["time"]
    file["big-endian"] = numbers["position [mm]"].astype(">f8")
    file.create_dataset("lzf", data=numbers["position [mm]"], chunks=(8,), compression="lzf")
    file.create_dataset("elsewhere", shape=(len(rows),), dtype="f8", external=[("elsewhere.bin", 0, h5py.h5f.UNLIMITED)])
    file["records"] = np.zeros(len(rows), dtype=[("a", "f8"), ("b", "i4")])
    file["linked"] = h5py.ExternalLink("h5py.h5", "/speed")
    layout = h5py.VirtualLayout(shape=(len(rows),), dtype="f8")
    layout[:] = h5py.VirtualSource("h5py.h5", "speed", shape=(len(rows),))
    file.create_virtual_dataset("virtual", layout)
