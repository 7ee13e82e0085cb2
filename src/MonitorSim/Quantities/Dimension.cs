namespace MonitorSim.Quantities;

/// <summary>What a quantity measures, as powers of the base units m, rad, s, kg, K and A. Two units can stand for each other only
/// where these agree. Angle counts as a dimension of its own, so that a rotary limit cannot be given to a linear axis.</summary>
public readonly record struct Dimension(int Length, int Angle, int Time, int Mass, int Temperature, int Current)
{
    /// <summary>A plain number.</summary>
    public static readonly Dimension None = default;
    /// <summary>Length, m.</summary>
    public static readonly Dimension Metre = new(1, 0, 0, 0, 0, 0);
    /// <summary>Angle, rad.</summary>
    public static readonly Dimension Radian = new(0, 1, 0, 0, 0, 0);
    /// <summary>Time, s.</summary>
    public static readonly Dimension Second = new(0, 0, 1, 0, 0, 0);
    /// <summary>Mass, kg.</summary>
    public static readonly Dimension Kilogram = new(0, 0, 0, 1, 0, 0);
    /// <summary>Temperature, °C.</summary>
    public static readonly Dimension Celsius = new(0, 0, 0, 0, 1, 0);
    /// <summary>Current, A.</summary>
    public static readonly Dimension Ampere = new(0, 0, 0, 0, 0, 1);
    /// <summary>Force, N.</summary>
    public static readonly Dimension Newton = Kilogram * Metre / Second / Second;
    /// <summary>Torque, N·m (the same dimension as energy, J).</summary>
    public static readonly Dimension NewtonMetre = Newton * Metre;
    /// <summary>Voltage, V.</summary>
    public static readonly Dimension Volt = NewtonMetre / Second / Ampere;
    /// <summary>Frequency, Hz.</summary>
    public static readonly Dimension Hertz = None / Second;

    /// <summary>The dimension of a product.</summary>
    public static Dimension operator *(Dimension a, Dimension b) => new(a.Length + b.Length, a.Angle + b.Angle, a.Time + b.Time,
        a.Mass + b.Mass, a.Temperature + b.Temperature, a.Current + b.Current);

    /// <summary>The dimension of a quotient.</summary>
    public static Dimension operator /(Dimension a, Dimension b) => new(a.Length - b.Length, a.Angle - b.Angle, a.Time - b.Time,
        a.Mass - b.Mass, a.Temperature - b.Temperature, a.Current - b.Current);
}
