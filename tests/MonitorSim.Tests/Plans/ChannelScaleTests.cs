using Fractions;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Tests.Plans;

public class ChannelScaleTests
{
    private static readonly AxisPlan Spindle = new() { Motion = AxisMotion.Linear, Feed = "20 mm/rev", Gear = "5:1" };
    private static readonly AxisPlan Table = new() { Motion = AxisMotion.Rotary, Gear = "5:2" };

    private static Fraction Si(AxisPlan axis, Kind kind, ChannelPlan channel, int raw) => ChannelScale.Of(axis, kind, channel).ToSi(raw);

    [Fact]
    public void At_the_load_a_value_is_raw_by_scale_turned_plus_offset()
    {
        var channel = new ChannelPlan { Column = "x", Unit = "mm", Scale = new Fraction(1, 2), Invert = true, Offset = "1 cm" };
        Assert.Equal(new Fraction(-3 * 5 + 100, 10) / 1000, Si(Spindle, Kind.Position, channel with { Offset = "10 mm" }, 3));
        Assert.Equal(new Fraction(85, 10000), Si(Spindle, Kind.Position, channel, 3));
        Assert.Equal(new Fraction(0), Si(Spindle, Kind.Temperature, new() { Column = "T", Unit = "K", Offset = "0.15 K", Side = RecordedSide.Motor }, 273));
    }

    // 5 motor turns are 1 turn of the spindle are 20 mm.
    [Theory]
    [InlineData(Kind.Position, "rev", "20 mm")]
    [InlineData(Kind.Velocity, "rev/s", "20 mm/s")]
    [InlineData(Kind.Velocity, "rpm", "0.02 m/min")]
    [InlineData(Kind.Acceleration, "rev/s²", "20 mm/s²")]
    public void Motor_turns_become_travel(Kind kind, string unit, string five) =>
        Assert.Equal(Quantity.Parse(five).Exact, Si(Spindle, kind, new() { Column = "x", Unit = unit, Side = RecordedSide.Motor }, 5));

    [Theory]
    [InlineData(Kind.Position, "deg", "2 deg")]
    [InlineData(Kind.Velocity, "rpm", "2 rpm")]
    [InlineData(Kind.Torque, "N·m", "12.5 N·m")]
    public void A_gear_divides_motion_and_multiplies_torque(Kind kind, string unit, string five) =>
        Assert.Equal(Quantity.Parse(five).Exact, Si(Table, kind, new() { Column = "x", Unit = unit, Side = RecordedSide.Motor }, 5));

    [Fact]
    public void Power_is_the_same_at_motor_and_load()
    {
        var torque = ChannelScale.Of(Spindle, Kind.Torque, new() { Column = "q", Unit = "N·m", Side = RecordedSide.Motor });
        var speed = ChannelScale.Of(Spindle, Kind.Velocity, new() { Column = "v", Unit = "rad/s", Side = RecordedSide.Motor });
        Assert.Equal(Dimension.Newton, torque.Dimension);
        Assert.Equal(Fraction.One, torque.Factor * speed.Factor);
        Assert.Equal(5 * 2 * Unit.Pi / new Fraction(2, 100), torque.Factor);
    }

    [Fact]
    public void A_second_takes_what_it_does_not_say_from_the_first()
    {
        var first = new ChannelPlan
        {
            Column = "x", Unit = "rev", Side = RecordedSide.Motor, Scale = 2, Invert = true, Offset = "1 rev",
            Second = new() { Column = "x2", Tolerance = "1 mm" },
        };
        Assert.Equal(ChannelScale.Of(Spindle, Kind.Position, first), ChannelScale.OfSecond(Spindle, Kind.Position, first));
        var other = first with { Second = first.Second with { Unit = "mm", Side = RecordedSide.Load, Scale = 3, Invert = false, Offset = "0 mm" } };
        Assert.Equal(new Fraction(3, 1000), ChannelScale.OfSecond(Spindle, Kind.Position, other).ToSi(1));
    }

    [Fact]
    public void What_the_recording_states_counts_where_the_plan_gives_no_unit()
    {
        var channel = new ChannelPlan { Column = "X enc" };
        Assert.Equal(new Fraction(3, 1000), ChannelScale.Of(Spindle, Kind.Position, channel, "mm").ToSi(3));
        Assert.Equal("column 'X enc': position: no unit in the plan and none in the recording; would do: mm, m, µm",
            Assert.Throws<InputException>(() => ChannelScale.Of(Spindle, Kind.Position, channel)).Message);
        Assert.Equal("column 'X enc': position: unit 'deg' is no linear position; would do: mm, m, µm",
            Assert.Throws<InputException>(() => ChannelScale.Of(Spindle, Kind.Position, channel, "deg")).Message);
        Assert.Equal("column 'X enc': position: recorded at the motor of a linear axis without feed; give the axis a feed, such as 20 mm/rev",
            Assert.Throws<InputException>(() => ChannelScale.Of(new(), Kind.Position, channel with { Unit = "rev", Side = RecordedSide.Motor })).Message);
    }

    [Fact]
    public void A_plan_in_CSharp_is_checked_by_path()
    {
        var plan = new Plan
        {
            Axes = new Dictionary<string, AxisPlan>
            {
                ["x axis"] = new()
                {
                    Channels = new() { Velocity = new() { Column = "v", Unit = "mm/s" } },
                    Stops = new() { Sto = new() },
                    Monitors = [new MonitorSim.Monitors.Sls { Name = "slow", Limit = "3 rpm", Reaction = Reaction.None, Request = "gate" }],
                },
            },
        };
        Assert.Equal(
            [
                "axes.\"x axis\".monitors[0].request: request: unknown signal 'gate'; there is no signal",
                "axes.\"x axis\".monitors[0].limit: limit: unit 'rpm' is no linear speed; would do: mm/s, m/s, m/min",
            ],
            PlanChecks.Check(plan).Select(problem => problem.ToString()));
        Assert.Throws<InputException>(() => PlanChecks.Require(plan));
    }
}
