using ScottPlot;

namespace MonitorSim.Plots;

/// <summary>Colours that colour-blind people can tell apart (M. Okabe, K. Ito, 2008); line styles and markers carry the same meaning in black and white.</summary>
internal static class Palette
{
    public static readonly Color Measured = Color.FromHex("#0072B2");
    public static readonly Color Simulated = Color.FromHex("#009E73");
    public static readonly Color Second = Color.FromHex("#CC79A7");
    public static readonly Color Recorded = Color.FromHex("#777777");
    public static readonly Color Limit = Color.FromHex("#D55E00");
    public static readonly Color Room = Color.FromHex("#009E73");
    public static readonly Color Trip = Color.FromHex("#000000");
    // Told apart by lightness too: the SVG canvas draws no hatches.
    public static readonly Color Watching = Color.FromHex("#E69F00").WithAlpha(0.3);
    public static readonly Color Arming = Color.FromHex("#56B4E9").WithAlpha(0.14);

    public static Color Of(AxisState state) => state switch
    {
        AxisState.Running => Color.FromHex("#FFFFFF"),
        AxisState.Holding => Color.FromHex("#56B4E9"),
        AxisState.StoppingToHold => Color.FromHex("#F0E442"),
        AxisState.StoppingToOff => Color.FromHex("#E69F00"),
        _ => Color.FromHex("#777777"),
    };
}
