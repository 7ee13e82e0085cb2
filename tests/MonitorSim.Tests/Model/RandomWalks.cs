namespace MonitorSim.Tests.Model;

/// <summary>Random rows of whole numbers that move like machines: they stand, move steadily, ramp and jitter, and come back to the same values.</summary>
internal static class RandomWalks
{
    /// <summary>A position that stands and moves in stretches.</summary>
    public static int[] Position(Dice dice, int count) => Stretches(dice, count, (x, pace) => x + pace + (dice.Chance(10) ? dice.Next(-1, 1) : 0));

    /// <summary>A speed or torque that ramps, holds and returns to zero.</summary>
    public static int[] Speed(Dice dice, int count) => Stretches(dice, count, (x, pace) => dice.Chance(12) ? 0 : dice.Chance(8) ? -x : Math.Abs(x + pace) > 8 ? x : x + pace);

    /// <summary>A slow one around a base.</summary>
    public static int[] Temperature(Dice dice, int count) => Stretches(dice, count, (x, pace) => Math.Clamp(x + (dice.Chance(40) ? Math.Sign(pace) : 0), -6, 6), 25);

    /// <summary>A signal that changes now and then.</summary>
    public static bool[] Signal(Dice dice, int count, int percent)
    {
        var isOn = dice.Chance(40);
        return [.. Enumerable.Range(0, count).Select(_ => isOn ^= dice.Chance(percent))];
    }

    private static int[] Stretches(Dice dice, int count, Func<int, int, int> next, int start = 0)
    {
        var (x, pace) = (dice.Next(-2, 2), 0);
        var walk = new int[count];
        for (var k = 0; k < count; k++)
        {
            if (k % 4 == 0 || dice.Chance(15)) pace = dice.Pick(0, 0, 0, 1, -1, 2, -2);
            walk[k] = x + start;
            x = next(x, pace);
        }

        return walk;
    }
}
