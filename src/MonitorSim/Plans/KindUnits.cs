using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>What a kind of quantity is called, and which units would do.</summary>
/// <param name="Noun">As in "unit 'N' is no linear speed".</param>
/// <param name="Dimensions">Those that are accepted.</param>
/// <param name="Examples">Units that would do, the usual one first.</param>
internal sealed record KindUnits(string Noun, IReadOnlyList<Dimension> Dimensions, IReadOnlyList<string> Examples)
{
    private static readonly Dimension Speed = Dimension.Metre / Dimension.Second;
    private static readonly Dimension Turning = Dimension.Radian / Dimension.Second;

    /// <summary>"would do: mm/s, m/s, m/min".</summary>
    public string WouldDo => "would do: " + string.Join(", ", Examples);

    /// <summary>The units of a kind.</summary>
    /// <param name="kind">What is measured; for channels see <see cref="RecordedQuantity"/>.</param>
    /// <param name="rotary">Whether the axis is rotary; for torques, whether it is a torque (N·m) and no force (N).</param>
    public static KindUnits Of(Kind kind, bool rotary) => kind switch
    {
        Kind.Time => New("duration", [Dimension.Second], "ms", "s", "us", "min"),
        Kind.Rate => New("sampling rate", [Dimension.Hertz], "Hz", "kHz"),
        Kind.Position => rotary ? New("rotary position", [Dimension.Radian], "deg", "rad", "rev") : New("linear position", [Dimension.Metre], "mm", "m", "µm"),
        Kind.Velocity => rotary ? New("rotary speed", [Turning], "rpm", "deg/s", "rad/s", "rev/s") : New("linear speed", [Speed], "mm/s", "m/s", "m/min"),
        Kind.Acceleration => rotary
            ? New("rotary acceleration", [Turning / Dimension.Second], "deg/s²", "rad/s²", "rev/s²")
            : New("linear acceleration", [Speed / Dimension.Second], "mm/s²", "m/s²"),
        Kind.Jerk => rotary
            ? New("rotary jerk", [Turning / Dimension.Second / Dimension.Second], "deg/s³", "rad/s³")
            : New("linear jerk", [Speed / Dimension.Second / Dimension.Second], "mm/s³", "m/s³"),
        Kind.Torque or Kind.Force => rotary
            ? New("rotary torque", [Dimension.NewtonMetre], "N·m", "Nm", "kN·m", "mN·m")
            : New("force", [Dimension.Newton], "N", "kN"),
        Kind.Temperature => New("temperature", [Dimension.Celsius], "°C", "K", "°F"),
        Kind.TemperatureDifference => New("temperature difference", [Dimension.Celsius], "K", "°C", "°F"),
        Kind.Feed => New("feed", [Dimension.Metre / Dimension.Radian], "mm/rev", "m/rev"),
        Kind.Inertia => rotary
            ? New("moment of inertia", [Dimension.Kilogram * Dimension.Metre * Dimension.Metre], "kg·m²", "kg·cm²")
            : New("mass", [Dimension.Kilogram], "kg", "t"),
        Kind.Viscous => rotary
            ? New("rotary viscous friction", [Dimension.NewtonMetre / Turning, Dimension.NewtonMetre * Dimension.Second], "N·m·s/rad", "mN·m/rpm")
            : New("linear viscous friction", [Dimension.Newton / Speed], "N·s/m", "N/(mm/s)"),
        Kind.Resistance => New("resistance", [Dimension.Volt / Dimension.Ampere], "Ω", "mΩ"),
        Kind.Inductance => New("inductance", [Dimension.Volt * Dimension.Second / Dimension.Ampere], "mH", "H", "µH"),
        Kind.FluxLinkage => New("flux linkage", [Dimension.Volt * Dimension.Second], "V·s", "Wb", "mWb"),
        Kind.Energy => New("energy", [Dimension.NewtonMetre], "J", "kJ"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "it depends on the channel"),
    };

    /// <summary>Torque or force, whichever.</summary>
    public static readonly KindUnits TorqueOrForce =
        New("torque or force", [Dimension.NewtonMetre, Dimension.Newton], "N·m", "Nm", "kN·m", "mN·m", "N", "kN");

    private static KindUnits New(string noun, Dimension[] dimensions, params string[] examples) => new(noun, dimensions, examples);
}
