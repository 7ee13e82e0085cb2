using System.Globalization;
using MonitorSim.Plans;
using MonitorSim.Tests.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Standards;

/// <summary>Facts of open recordings (README beside them, recomputed from the files) as limits: met, and missed by one digit.</summary>
/// <remarks>kr300: J. Weigand, J. Ulmen, A. Janot, M. Ruskowski, 2021, github JonasWeigand/Robot_Identification, commit 9e403c0 (MIT licence). arm6: S. Liu, M. Althoff,
/// "Reachset conformance of forward dynamic models for the formal analysis of robots", IROS 2018; github nikhilushinde/AutoKoopman, commit 6edafed (CC0 1.0).
/// More of kr300 (axis 6, encoders, standstill of axis 1 by position) in <c>RobotRecordingTests</c>.</remarks>
public class RecordedFactsTests
{
    private const double Degree = 3.141592653589793 / 180;

    private static ReplayResult Replayed(string recording, string column, string unit, string monitor, string head = "")
    {
        var plan = Bench.Plan($$"""
            "motion": "rotary", "stops": { "STO": {} }, "channels": { "velocity": { "column": "{{column}}", "unit": "{{unit}}" } },
            "monitors": [ { "name": "m", "reaction": "none", {{monitor}} } ]
            """, head);
        return Replay.Run(plan, PlannedTrace.Read(plan, SharedFolder.Recording(recording)));
    }

    private static string Column(int axis) => string.Create(CultureInfo.InvariantCulture, $"a{axis}_act_vel_mot_deg_per_s");

    // A limit one unit of the last quoted digit above the peak never trips, one as much below trips at the quoted time; the sign is that of the quoted speed.
    [SkippableTheory]
    [InlineData(1, 25.3308, 3.644, "9.9 s")]
    [InlineData(2, -25.0743, 4.208, "9.9 s")]
    [InlineData(3, -24.1999, 3.584, "9.9 s")]
    [InlineData(4, -10.678, 2.268, "2.5 s")]
    [InlineData(6, -19.344, 2.048, "2.5 s")]
    public void Peak_speeds(int axis, double peak, double time, string until)
    {
        var digit = axis <= 3 ? 0.0001m : 0.001m;
        var head = $$""" "signals": { "early": { "windows": [["0 s", "{{until}}"]] } }, """;
        ReplayResult With(decimal limit, string more = "") => Replayed("kr300/run_a.csv", Column(axis), "deg/s",
            string.Create(CultureInfo.InvariantCulture, $""" "function": "SLS", "request": "early", "limit": "{limit} deg/s" {more} """), head);
        Assert.Empty(With(Math.Abs((decimal)peak) + digit).Trips);
        var trip = Assert.Single(With(Math.Abs((decimal)peak) - digit).Trips);
        Assert.Equal((decimal)time, trip.Time);
        Assert.Equal(Math.Abs(peak), trip.Value!.Value / Degree, (double)digit);

        // A signed limit does not see a backward speed.
        Assert.Equal(peak > 0, With(Math.Abs((decimal)peak) - digit, """, "signed": true """).Trips.Any(t => t.Time == (decimal)time));
    }

    // Commanded -0.042 deg/s while axis 6 breaks loose: a limit of the commanded speed at that moment has nothing to say about the motion.
    [SkippableFact]
    public void The_command_of_axis_6_does_not_show_that_it_breaks_loose()
    {
        const string head = """ "signals": { "loose": { "windows": [["2.016 s", "2.0760001 s"]] } }, """;
        var commanded = Replayed("kr300/run_a.csv", "a6_ref_vel_simple_deg_per_s", "deg/s", """ "function": "SLS", "request": "loose", "limit": "5 deg/s" """, head);
        Assert.Empty(commanded.Trips);
        Assert.InRange(commanded.Headroom.Single().Critical!.Value / Degree, 0, 1);
        var moved = Replayed("kr300/run_a.csv", Column(6), "deg/s", """ "function": "SLS", "request": "loose", "limit": "5 deg/s" """, head);
        Assert.Equal((2.016m, 2.076m), (moved.Excursions.Single().From, moved.Excursions.Single().Until));
    }

    // Axis 1: |v| <= 0.056 deg/s until the commanded motion begins at 0.760 s.
    [SkippableTheory]
    [InlineData("0.056 deg/s", false)]
    [InlineData("0.055 deg/s", true)]
    public void Standstill_by_speed_until_the_commanded_motion(string limit, bool trips) =>
        Assert.Equal(trips, Replayed("kr300/run_a.csv", Column(1), "deg/s", $""" "function": "SLS", "request": "still", "limit": "{limit}" """,
            """ "signals": { "still": { "windows": [["0 s", "0.76 s"]] } }, """).IsTripped);

    // Many runs of one programme, already moving at the start and near standstill at the end: a standstill limit trips at the first sample and never in the last five.
    [SkippableTheory]
    [InlineData("3.728 s", 1, 7, 13, 20)]
    [InlineData("4.332 s", 80, 84, 88, 93)]
    public void Repeated_programmes_begin_moving_and_end_near_standstill(string end, params int[] runs)
    {
        static string Axis(int joint) => string.Create(CultureInfo.InvariantCulture, $$"""
            "joint {{joint}}": { "motion": "rotary", "stops": { "STO": {} }, "channels": { "velocity": { "column": "qd{{joint}}_rad_s", "unit": "rad/s" } }, "monitors": [
              { "name": "begun", "function": "SLS", "limit": "0.05 rad/s", "reaction": "none" },
              { "name": "ended", "function": "SLS", "limit": "0.05 rad/s", "request": "end", "reaction": "none" } ] }
            """);
        var plan = PlanReader.Parse($$"""
            { "plan": 1, "signals": { "end": { "windows": [["{{end}}", "99 s"]] } }, "axes": { {{string.Join(", ", Enumerable.Range(1, 6).Select(Axis))}} } }
            """);
        foreach (var run in runs)
        {
            var result = Replay.Run(plan, PlannedTrace.Read(plan, SharedFolder.Recording(string.Create(CultureInfo.InvariantCulture, $"arm6/run_{run:000}.csv"))));
            Assert.Equal(0m, result.Trips.Single(trip => trip.Axis == "joint 3" && trip.Monitor == "begun").Time);
            Assert.DoesNotContain(result.Trips, trip => trip.Monitor == "ended");
            Assert.Equal(0.016m, result.Coverage.First(coverage => coverage.Monitor == "ended").Watched);
        }
    }
}
