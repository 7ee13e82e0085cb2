using System.Globalization;
using MonitorSim.Explain;
using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary>Results as tables for people, in the units that they wrote.</summary>
internal static class Tables
{
    public static void Write(Terminal terminal, bool noColor, ReplayResult result)
    {
        var console = Console(terminal, noColor);
        console.WriteLine(PrintableText.Of($"{result.Plan.Title} — {result.Trace}: {result.Samples} samples, {result.Duration.ToString(CultureInfo.InvariantCulture)} s"));
        console.WriteLine(result.IsTripped ? $"TRIPPED: {result.Trips.Count} trip{(result.Trips.Count == 1 ? "" : "s")}" : "CLEAN: nothing tripped");
        if (result.IsTripped) console.Write(Trips(result));
        console.Write(Room(result));
        foreach (var warning in result.Warnings) console.WriteLine(PrintableText.Of($"warning: {warning}"));
        console.WriteLine(Cautions.Text);
    }

    public static IAnsiConsole Console(Terminal terminal, bool noColor)
    {
        var plain = noColor || Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 } || System.Console.IsOutputRedirected;
        var console = AnsiConsole.Create(new()
        {
            Ansi = plain ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = plain ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
            Out = new AnsiConsoleOutput(terminal.Out),
        });
        if (plain) console.Profile.Width = 160;
        return console;
    }

    public static string Time(decimal? seconds) => seconds is { } time ? time.ToString("0.#########", CultureInfo.InvariantCulture) + " s" : "–";

    private static Table Trips(ReplayResult result)
    {
        var units = new UserUnits(result.Plan);
        var table = Headed("axis", "monitor", "side", "time", "value", "limit", "reaction", "longest filter that trips");
        foreach (var trip in result.Trips.Take(40))
        {
            table.AddRow(Cells(trip.Axis, trip.Monitor, trip.Side, Time(trip.Time), units.Text(trip.Axis, trip.Monitor, trip.Side, trip.Value, trip.Unit),
                units.Text(trip.Axis, trip.Monitor, trip.Side, trip.Limit, trip.Unit), UserUnits.Reaction(trip.Reaction), Time(trip.AvoidedBy.FilterAbove)));
        }

        if (result.Trips.Count > 40) table.AddRow(Cells("…", $"{result.Trips.Count - 40} more", "", "", "", "", "", ""));
        return table;
    }

    private static Table Room(ReplayResult result)
    {
        var units = new UserUnits(result.Plan);
        var table = Headed("axis", "monitor", "side", "limit", "needed", "headroom", "watched", "requests", "trips");
        var coverage = result.Coverage.ToDictionary(c => (c.Axis, c.Monitor));
        foreach (var room in result.Headroom)
        {
            var seen = coverage[(room.Axis, room.Monitor)];
            string Text(double? value) => units.Text(room.Axis, room.Monitor, room.Side, value, room.Unit);
            table.AddRow(Cells(room.Axis, room.Level is { } level ? $"{room.Monitor} (level {level})" : room.Monitor, room.Side, Text(room.Limit), units.Enough(room.Axis, room.Monitor, room.Side, room.Level, room.Critical, room.Unit, IsLower(room)),
                room.Percent is { } percent ? percent.ToString("0.#", CultureInfo.InvariantCulture) + " %" : room.Room is null ? "never challenged" : units.Difference(room.Axis, room.Monitor, room.Side, room.Level, room.Room.Value, room.Unit),
                Time(seen.Watched), seen.Requests.ToString(CultureInfo.InvariantCulture), seen.Trips.ToString(CultureInfo.InvariantCulture)));
        }

        return table;
    }

    /// <summary>Of a limit from below the room is the critical limit minus it.</summary>
    private static bool IsLower(Headroom room) => room.Side == "lower" || (room.Side == "deceleration" && room.Monitor is ("SS1" or "SS2"));

    public static Table Headed(params string[] heads)
    {
        var table = new Table().Border(TableBorder.Ascii2);
        foreach (var head in heads) table.AddColumn(new TableColumn(new Text(head)));
        return table;
    }

    public static Text[] Cells(params string[] texts) => [.. texts.Select(text => new Text(PrintableText.Of(text)))];
}
