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

    [Fact]
    public void WhatIsGivenBackCanBeTakenAgain()
    {
        var budget = new MemoryBudget(100);
        using var first = budget.Take(40, default);
        for (var k = 0; k < 5; k++) budget.Take(60, default).Dispose();
        using var second = budget.Take(60, default);
        using var soon = new CancellationTokenSource(20);
        Assert.Throws<OperationCanceledException>(() => budget.Take(1, soon.Token));
    }

    /// <summary>All who wait are woken, and those for whom there is room go on.</summary>
    [Fact]
    public async Task WaitersGoOnWhenThereIsRoom()
    {
        var budget = new MemoryBudget(100);
        var all = budget.Take(100, default);
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        var waiters = Enumerable.Range(0, 2).Select(_ => Task.Run(() => budget.Take(50, patience.Token))).ToList();
        await Task.Delay(50);
        Assert.All(waiters, waiter => Assert.False(waiter.IsCompleted));
        all.Dispose();
        foreach (var share in await Task.WhenAll(waiters)) share.Dispose();
    }
}
