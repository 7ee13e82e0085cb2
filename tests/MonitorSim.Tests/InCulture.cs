using System.Globalization;

namespace MonitorSim.Tests;

/// <summary>Runs a check under cultures that write numbers and change case in other ways.</summary>
internal static class InCulture
{
    public static void Each(Action check)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            foreach (var name in new[] { "", "de-DE", "tr-TR" })
            {
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(name);
                check();
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
