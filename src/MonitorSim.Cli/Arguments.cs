using System.CommandLine;

namespace MonitorSim.Cli;

/// <summary>Arguments and options that several commands share.</summary>
internal static class Arguments
{
    public static Argument<string> Plan() => new("PLAN") { Description = "The plan, a JSON file; - is standard input." };

    public static Argument<string> Trace() => new("TRACE") { Description = "The recording, CSV, Parquet or HDF5; - is standard input." };

    public static Argument<string[]> Traces() => new("TRACE") { Description = "The recordings, CSV, Parquet or HDF5; - is standard input.", Arity = ArgumentArity.OneOrMore };

    public static Option<string?> File(string name, string description) => new(name) { Description = description, HelpName = "FILE" };

    public static Option<string?> Folder(string name, string description) => new(name) { Description = description, HelpName = "FOLDER" };

    public static Option<string?> Parquet() => new("--parquet") { Description = "Writes the tables of --csv as Parquet files for DuckDB and other engines, one a table.", HelpName = "FOLDER" };

    public static Option<string?> Report() => new("--report") { Description = "Writes one HTML page that opens from disk and prints; - is standard output.", HelpName = "FILE.html" };

    public static Option<bool> Quiet() => new("--quiet") { Description = "Nothing for people on standard output." };

    public static Option<bool> NoColor() => new("--no-color") { Description = "No colours, as with NO_COLOR." };
}
