using System.Globalization;
using Microsoft.AspNetCore.Components;

namespace MonitorSim.Reports.Scenes;

/// <summary>Places and texts in the page's own pictures.</summary>
internal static class Svg
{
    /// <summary>A whole number.</summary>
    public static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A place: to a tenth of the picture's unit.</summary>
    public static string Place(double place) => place.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A diamond around a place.</summary>
    public static string Diamond(double x, double y) => $"M{Place(x)} {Place(y - 8)}l8 8l-8 8l-8 -8z";

    /// <summary>A text. Razor takes an element of that name for its own, so it is built by hand.</summary>
    public static RenderFragment Label(double x, double y, string anchor, string text) => builder =>
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "x", Place(x));
        builder.AddAttribute(2, "y", Place(y));
        builder.AddAttribute(3, "text-anchor", anchor);
        builder.AddContent(4, text);
        builder.CloseElement();
    };
}
