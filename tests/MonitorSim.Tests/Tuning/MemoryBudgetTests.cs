using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class MemoryBudgetTests
{
    [Fact]
    public void NeverMoreThanTheBudgetAtATime()
    {
        var budget = new MemoryBudget(100);
        var (held, most) = (0, 0);
        var gate = new Lock();
        Parallel.For(0, 200, new ParallelOptions { MaxDegreeOfParallelism = 8 }, k =>
        {
            var share = 20 + k % 5 * 15;
            using var taken = budget.Take(share, default);
            lock (gate) most = Math.Max(most, held += share);
            Thread.Yield();
            lock (gate) held -= share;
        });
        Assert.InRange(most, 1, 100);
    }

    [Fact]
    public void AFileLargerThanTheBudgetGoesAlone()
    {
        var budget = new MemoryBudget(100);
        using (budget.Take(1000, default))
        {
            using var soon = new CancellationTokenSource(20);
            Assert.Throws<OperationCanceledException>(() => budget.Take(1, soon.Token));
        }

        budget.Take(1, default).Dispose();
    }
}
