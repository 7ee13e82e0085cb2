using System.Globalization;
using MonitorSim.Explain;

namespace MonitorSim.Reports;

/// <summary>Headroom as cells of a table.</summary>
internal static class RoomTexts
{
    /// <summary>The limit as the plan states it.</summary>
    public static string Limit(UserUnits units, Headroom room) => units.Text(room.Axis, room.Monitor, room.Side, room.Level, room.Limit, room.Unit);

    /// <summary>What the recording needed, rounded to the side that does not trip.</summary>
    public static string Needed(UserUnits units, Headroom room, string function) =>
        units.Enough(room.Axis, room.Monitor, room.Side, room.Level, room.Critical, room.Unit, Phrases.IsLower(function, room.Side));

    /// <summary>The room with its sign, and its share of the limit.</summary>
    public static string Room(UserUnits units, Headroom room) => room.Room is not { } size ? "never challenged"
        : units.Difference(room.Axis, room.Monitor, room.Side, room.Level, size, room.Unit)
            + (room.Percent is { } percent ? $" ({percent.ToString("0.#", CultureInfo.InvariantCulture)} %)" : "");
}
