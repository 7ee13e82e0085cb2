#!/usr/bin/env python3
"""Times MonitorSim beside pandas, numpy and scipy on the same data, in one run, and prints the ratios as a Markdown table.

    dotnet build -c Release bench/MonitorSim.Bench && python3 bench/peers.py

Needs numpy, scipy and pandas (Debian: python3-pandas python3-scipy). Each figure is the median of nine runs after two that do not count; each peer is
timed right after MonitorSim. Whole commands are timed as processes. Quiet machines give the better figures; none is given for a busy one.
"""
import os
import platform
import statistics
import subprocess
import tempfile
import time

import numpy
import pandas
import scipy
from scipy.ndimage import minimum_filter1d

HERE = os.path.dirname(os.path.abspath(__file__))
BENCH = os.path.join(HERE, "MonitorSim.Bench/bin/Release/net10.0/MonitorSim.Bench.dll")
CLI = os.path.join(HERE, "../src/MonitorSim.Cli/bin/Release/net10.0/MonitorSim.Cli.dll")
DEMO = os.path.join(HERE, "../traces/bridge-gate-speed")


def median(work, runs=9, before=2):
    seconds = []
    for run in range(-before, runs):
        start = time.perf_counter()
        work()
        if run >= 0:
            seconds.append(time.perf_counter() - start)
    return statistics.median(seconds)


def command(*words):
    return median(lambda: subprocess.run(words, stdout=subprocess.DEVNULL, check=False), runs=15)


def processor():
    with open("/proc/cpuinfo", encoding="ascii") as lines:
        return next((line.split(":")[1].strip() for line in lines if line.startswith("model name")), platform.machine())


def main():
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["dotnet", BENCH, "data", folder], check=True)
        told = subprocess.run(["dotnet", BENCH, "times", folder], check=True, capture_output=True, text=True).stdout
        ours = {name: float(middle) for name, middle, _ in (line.split("\t") for line in told.splitlines())}
        csv = os.path.join(folder, "recording.csv")
        speed = numpy.fromfile(os.path.join(folder, "speed.f64"))
        peers = [
            ("read", "pandas.read_csv, C engine", median(lambda: pandas.read_csv(csv, engine="c"))),
            ("quiet limit", "numpy (abs(x) > L).any()", median(lambda: bool((numpy.abs(speed) > 33).any()))),
            ("critical limit at 100 cycles", "scipy minimum_filter1d + max", median(lambda: minimum_filter1d(numpy.abs(speed), 100).max(), runs=3, before=1)),
            ("frontier", "scipy minimum_filter1d + max, one filter", median(lambda: minimum_filter1d(numpy.abs(speed), 100).max(), runs=3, before=1)),
        ]
        hello = os.path.join(folder, "hello")
        os.mkdir(hello)
        with open(os.path.join(hello, "hello.csproj"), "w", encoding="ascii") as file:
            file.write('<Project Sdk="Microsoft.NET.Sdk"><PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework></PropertyGroup></Project>')
        with open(os.path.join(hello, "Program.cs"), "w", encoding="ascii") as file:
            file.write('System.Console.WriteLine("a line");')
        subprocess.run(["dotnet", "build", "-c", "Release", "-v", "q", hello], check=True, stdout=subprocess.DEVNULL)
        line = command("dotnet", os.path.join(hello, "bin/Release/net10.0/hello.dll"))
        replay = ["replay", os.path.join(DEMO, "plan.json"), os.path.join(DEMO, "trace.csv")]
        ours["replay of a demo case, as built"] = command("dotnet", CLI, *replay)
        peers.append(("replay of a demo case, as built", "dotnet printing a line", line))
        ahead = os.path.join(folder, "ahead")
        subprocess.run(["dotnet", "publish", os.path.join(HERE, "../src/MonitorSim.Cli"), "-c", "Release", "-r", "linux-x64", "--self-contained", "false", "-o", ahead, "-v", "q"],
                       check=True, stdout=subprocess.DEVNULL)
        ours["replay of a demo case, compiled ahead"] = command("dotnet", os.path.join(ahead, "MonitorSim.Cli.dll"), *replay)
        peers.append(("replay of a demo case, compiled ahead", "dotnet printing a line", line))
    print(f"{processor()}; .NET {subprocess.run(['dotnet', '--version'], capture_output=True, text=True, check=True).stdout.strip()} SDK, Python {platform.python_version()}, "
          f"numpy {numpy.__version__}, scipy {scipy.__version__}, pandas {pandas.__version__}; load {os.getloadavg()[0]:.1f}\n")
    print("| question | MonitorSim, ms | peer | peer, ms | peer / MonitorSim |")
    print("|---|---|---|---|---|")
    for name, peer, seconds in peers:
        print(f"| {name} | {ours[name] * 1e3:.1f} | {peer} | {seconds * 1e3:.1f} | {seconds / ours[name]:.2f} |")


if __name__ == "__main__":
    main()
