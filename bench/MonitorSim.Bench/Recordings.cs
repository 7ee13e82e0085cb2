using System.Globalization;
using System.Text;
using MonitorSim.Traces;

namespace MonitorSim.Bench;

/// <summary>Invented recordings, the same on every machine: motor-like speeds with noise, one sample a millisecond.</summary>
internal static class Recordings
{
    /// <summary>Moves of some seconds with ramps between them, mm/s at most about 30, and noise of some tenths.</summary>
    public static double[] Speed(int samples, int seed = 1)
    {
        var dice = new Random(seed);
        var values = new double[samples];
        double target = 0, speed = 0;
        for (var k = 0; k < samples; k++)
        {
            if (k % 2_000 == 0) target = Math.Round(60 * dice.NextDouble() - 30);
            speed += Math.Clamp(target - speed, -0.1, 0.1);
            values[k] = Math.Round(speed + 0.6 * (dice.NextDouble() - 0.5), 6);
        }

        return values;
    }

    public static Trace Trace(params (string Name, double[] Values)[] columns) => new("bench", [.. Enumerable.Range(0, columns[0].Values.Length).Select(k => k * 1_000_000L)],
        [.. columns.Select(column => new NumberColumn(column.Name, null, column.Values))]);

    /// <summary>A file of a time column and six columns of six decimals.</summary>
    public static void WriteCsv(string path, int rows)
    {
        var columns = Enumerable.Range(1, 6).Select(seed => Speed(rows, seed)).ToArray();
        using var text = new StreamWriter(path, append: false, Encoding.ASCII, 1 << 20);
        text.Write("t,a,b,c,d,e,f\n");
        for (var k = 0; k < rows; k++)
        {
            text.Write((k * 0.001).ToString("F6", CultureInfo.InvariantCulture));
            foreach (var column in columns)
            {
                text.Write(',');
                text.Write(column[k].ToString("F6", CultureInfo.InvariantCulture));
            }

            text.Write('\n');
        }
    }
}
