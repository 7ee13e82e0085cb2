namespace MonitorSim.Tuning;

/// <summary>Lets workers hold only so much at a time. One that alone wants more than all may have it while nobody else holds anything.</summary>
/// <param name="bytes">How much all together may hold.</param>
internal sealed class MemoryBudget(long bytes)
{
    private readonly Lock _gate = new();
    private readonly SemaphoreSlim _freed = new(0);
    private long _held;
    private int _holders, _waiting;

    /// <summary>Waits until there is room; the share is given back when it is disposed of.</summary>
    public IDisposable Take(long share, CancellationToken cancel)
    {
        while (!TryTake(share)) _freed.Wait(cancel);
        return new Share(this, share);
    }

    private bool TryTake(long share)
    {
        lock (_gate)
        {
            if (_holders > 0 && _held + share > bytes)
            {
                _waiting++;
                return false;
            }

            (_holders, _held) = (_holders + 1, _held + share);
            return true;
        }
    }

    private void Free(long share)
    {
        lock (_gate)
        {
            (_holders, _held) = (_holders - 1, _held - share);
            if (_waiting > 0) _freed.Release(_waiting);
            _waiting = 0;
        }
    }

    private sealed class Share(MemoryBudget budget, long share) : IDisposable
    {
        public void Dispose() => budget.Free(share);
    }
}
