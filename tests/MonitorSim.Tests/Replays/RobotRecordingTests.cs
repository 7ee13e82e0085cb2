using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Replays;

/// <summary>A six-axis industrial robot, 10 s at 250 Hz, with an axis that breaks loose uncommanded.</summary>
/// <remarks>Source: J. Weigand, J. Ulmen, A. Janot, M. Ruskowski, 2021, github JonasWeigand/Robot_Identification, commit 9e403c0 (MIT licence),
/// recording "2020-10-21 10s FF A 08ms". The numbers below come from the README beside the recording, recomputed from the file.</remarks>
public class RobotRecordingTests
{
    private static ReplayResult Replayed(int axis, string channels, string monitors, string head = "")
    {
        var path = SharedFolder.Recording("kr300/run_a.csv");
        var plan = Bench.Plan($$"""
            "motion": "rotary", "stops": { "STO": {} }, "channels": { {{channels.Replace("#", $"a{axis}", StringComparison.Ordinal)}} }, "monitors": [ {{monitors}} ]
            """, head);
        return Replay.Run(plan, PlannedTrace.Read(plan, path));
    }

    private static ReplayResult Speed(string limit) => Replayed(6, """ "velocity": { "column": "#_act_vel_mot_deg_per_s", "unit": "deg/s" } """,
        $$"""{ "name": "loose", "function": "SLS", "reaction": "stop 0", {{limit}} }""", """ "signals": { "early": { "windows": [["0 s", "2.5 s"]] } }, """);

    [SkippableFact]
    public void Limited_speed_sees_axis_6_break_loose()
    {
        var result = Speed(""" "limit": "5 deg/s" """);
        var trip = Assert.Single(result.Trips);
        Assert.Equal((504, 2.016m), (trip.Sample, trip.Time));
        Assert.Equal([(2.016m, AxisState.TorqueOff)], result.States.Single().Changes.Select(change => (change.Time, change.State)));

        // 16 samples from 2.016 to 2.076 s, and the peak among them; only until 2.5 s, as the axis is moved on purpose later on.
        var excursion = Speed(""" "request": "early", "limit": "5 deg/s" """).Excursions[0];
        Assert.Equal((2.016m, 2.076m, 0.060m, 2.048m, true), (excursion.From, excursion.Until, excursion.Duration, excursion.PeakAt, excursion.Trips));
        Assert.Equal(19.344, excursion.Peak * 180 / 3.141592653589793, 3);
    }

    [SkippableTheory]
    [InlineData("60 ms", 2.076)]
    [InlineData("56 ms", 2.072)]
    [InlineData("61 ms", null)]
    [InlineData("60.000001 ms", null)]
    public void A_filter_longer_than_the_excursion_passes_it(string filter, double? time)
    {
        var result = Speed($""" "request": "early", "limit": "5 deg/s", "filter": "{filter}" """);
        Assert.Equal(time is { } t ? [(decimal)t] : [], result.Trips.Select(trip => trip.Time));
        foreach (var trip in result.Trips) Assert.Equal(0.060m, trip.AvoidedBy.FilterAbove);
    }

    [SkippableTheory]
    [InlineData("0.0075 deg", 190, "0.760")]
    [InlineData("0.00752397 deg", 190, "0.760")]
    [InlineData("0.00752398 deg", 191, "0.764")]
    public void Standstill_is_left_where_the_commanded_motion_begins(string window, int sample, string time)
    {
        var result = Replayed(1, """ "position": { "column": "#_act_pos_mot_deg", "unit": "deg" } """,
            $$"""{ "name": "still", "function": "SOS", "reaction": "none", "window": "{{window}}" }""");
        var trip = Assert.Single(result.Trips);
        Assert.Equal((sample, decimal.Parse(time, System.Globalization.CultureInfo.InvariantCulture)), (trip.Sample, trip.Time));
        Assert.Equal("window", trip.Side);
    }

    // The largest differences of the two encoders, and one digit less.
    [SkippableTheory]
    [InlineData(1, "0.16776", null)]
    [InlineData(1, "0.16775999", 3.644)]
    [InlineData(2, "0.08772", null)]
    [InlineData(2, "0.08771999", 5.384)]
    [InlineData(3, "0.21507", null)]
    [InlineData(3, "0.21506999", 3.584)]
    public void Two_encoders_differ_by_exactly_so_much(int axis, string tolerance, double? time)
    {
        var result = Replayed(axis, $$"""
            "position": { "column": "#_act_pos_mot_deg", "unit": "deg", "second": { "column": "#_act_pos_se_deg", "tolerance": "{{tolerance}} deg", "time": "0 ms", "reaction": "none" } }
            """, "");
        Assert.Equal(time is { } t ? [("position two channels", (decimal)t)] : [], result.Trips.Select(trip => (trip.Monitor, trip.Time)));
        var headroom = Assert.Single(result.Headroom);
        if (time is null) Assert.Equal((0.0, 0.0), (headroom.Room, headroom.Percent));
        else Assert.True(headroom.Room < 0);
    }

    [SkippableFact]
    public void Encoders_that_are_not_fitted_read_zero_and_are_seen_to_differ()
    {
        var result = Replayed(5, """
            "position": { "column": "#_act_pos_mot_deg", "unit": "deg", "second": { "column": "#_act_pos_se_deg", "tolerance": "0.01 deg", "time": "0 ms" } }
            """, "");
        Assert.Equal((0, Reaction.Stop0), (result.Trips[0].Sample, result.Trips[0].Reaction));
    }
}
