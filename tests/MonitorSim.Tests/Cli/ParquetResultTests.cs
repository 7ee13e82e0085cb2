using System.Globalization;
using DuckDB.NET.Data;

namespace MonitorSim.Tests.Cli;

/// <summary><c>--parquet</c>: what another engine reads is what <c>--csv</c> says.</summary>
public sealed class ParquetResultTests : CommandTest
{
    private const string Case = "bridge-simulated";

    /// <summary>Two runs of two recordings each are one query, and each row tells its recording.</summary>
    [Fact]
    public void OneQueryReadsTheTablesOfAllRecordings()
    {
        string[] recordings = [Cut(Case, "long.csv", 0), Cut(Case, "short.csv", 60), Demo(Case, "trace.csv"), Cut(Case, "shorter.csv", 90)];
        foreach (var (run, name) in new[] { (recordings[..2], "monday"), (recordings[2..], "tuesday") })
            Assert.Equal(1, Run(["replay", Demo(Case, "plan.json"), .. run, "--parquet", Path.Combine(Folder, "parquet", name), "--csv", Path.Combine(Folder, "csv", name), "--quiet"]));
        Assert.DoesNotContain(Directory.EnumerateFiles(Folder, "*.part", SearchOption.AllDirectories), _ => true);

        foreach (var table in new[] { "replays", "trips", "excursions", "headroom", "coverage", "states", "simulated" })
        {
            foreach (var recording in recordings)
            {
                var run = Array.IndexOf(recordings, recording) < 2 ? "monday" : "tuesday";
                var csv = File.ReadAllLines(Path.Combine(Folder, "csv", run, Path.GetFileNameWithoutExtension(recording), table + ".csv"));
                Assert.Equal(csv, Query($"select * exclude (trace) from '{Folder}/parquet/*/{table}.parquet' where trace = '{recording}'"));
            }

            Assert.Equal(["trace", .. recordings.Order(StringComparer.Ordinal)], Query($"select distinct trace from '{Folder}/parquet/**/{table}.parquet' order by trace"));
        }
    }

    [Fact]
    public void ColumnsAreTyped()
    {
        Assert.Equal(1, Run("replay", Demo(Case, "plan.json"), Demo(Case, "trace.csv"), "--parquet", Folder, "--quiet"));
        var types = Query($"select column_name, column_type from (describe select * from '{Folder}/trips.parquet')")[1..];
        Assert.Contains("trace,VARCHAR", types);
        Assert.Contains("level,INTEGER", types);
        Assert.Contains("time_s,DECIMAL(19,9)", Unquoted(types));
        Assert.Contains("value,DOUBLE", types);
        Assert.Contains("exact,BOOLEAN", types);
    }

    /// <summary>A table without rows is there all the same, so that a query over it says 0.</summary>
    [Fact]
    public void ATableWithoutRowsCanBeQueried()
    {
        Assert.Equal(0, Run("replay", Demo("bridge-stop-good", "plan.json"), Demo("bridge-stop-good", "trace.csv"), "--parquet", Folder, "--quiet"));
        Assert.Equal(["count_star()", "0"], Query($"select count(*) from '{Folder}/trips.parquet'"));
        Assert.Equal(["verdict,duration_s", "clean,2"], Query($"select verdict, duration_s from '{Folder}/replays.parquet'"));
    }

    /// <summary>Where a recording cannot be read, there is no table of the others that looks whole.</summary>
    [Fact]
    public void AnErrorLeavesNothing()
    {
        Assert.Equal(2, Run("replay", Demo(Case, "plan.json"), Demo(Case, "trace.csv"), "no such recording.csv", "--parquet", Folder, "--quiet"));
        Assert.Empty(Directory.GetFiles(Folder));
    }

    [Fact]
    public void TuneWritesTheSameTables()
    {
        Assert.Equal(0, Run("tune", Demo("bridge-gate-speed", "plan.json"), Demo("bridge-gate-speed", "trace.csv"), Cut("bridge-gate-speed", "short.csv", 40), "--parquet", Folder, "--csv", Folder, "--quiet"));
        Same("limits", "frontier", "runs");
    }

    [Fact]
    public void StopWritesTheSameTables()
    {
        Assert.Equal(0, Run("stop", Demo("lift-runaway", "plan.json"), "--parquet", Folder, "--csv", Folder, "--quiet"));
        Assert.Equal(0, Run("stop", Demo("lift-runaway", "plan.json"), Cut("lift-runaway", "short.csv", 1400), "--parquet", Folder, "--csv", Folder, "--quiet"));
        Same("stops", "envelope", "overruns");
    }

    private void Same(params string[] tables) =>
        Assert.All(tables, table => Assert.Equal(File.ReadAllLines(Path.Combine(Folder, table + ".csv")), Query($"select * from '{Folder}/{table}.parquet'")));

    /// <summary>The same recording without its last rows.</summary>
    private string Cut(string name, string file, int rows)
    {
        var path = Path.Combine(Folder, file);
        File.WriteAllLines(path, File.ReadAllLines(Demo(name, "trace.csv"))[..^rows]);
        return path;
    }

    private static List<string> Unquoted(IEnumerable<string> rows) => [.. rows.Select(row => row.Replace("\"", "", StringComparison.Ordinal))];

    /// <summary>What DuckDB answers, as the CSV of results writes it.</summary>
    private static List<string> Query(string sql)
    {
        using var connection = new DuckDBConnection("DataSource=:memory:");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        List<string> rows = [string.Join(',', Enumerable.Range(0, reader.FieldCount).Select(reader.GetName))];
        while (reader.Read()) rows.Add(string.Join(',', Enumerable.Range(0, reader.FieldCount).Select(column => reader.IsDBNull(column) ? "" : Text(reader.GetValue(column)))));
        return rows;
    }

    private static string Text(object value) => MonitorSim.Cli.SheetCsv.Cell(value is decimal number ? decimal.Parse(number.ToString("0.#########", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) : value);
}
