using System.Runtime.InteropServices;

namespace MonitorSim.Traces;

/// <summary>The values of a column while nobody knows how many will come: blocks outside the managed heap, made into one array at the end. Each block is given back as soon as it is
/// copied, so that memory never holds a column twice.</summary>
internal sealed unsafe class Blocks<T> : IDisposable where T : unmanaged
{
    /// <summary>So many values make a block.</summary>
    public const int Size = 1 << 16;
    private readonly Queue<nint> _blocks = new();
    private T* _newest;

    /// <summary>Begins the next block.</summary>
    public void Open()
    {
        _newest = (T*)NativeMemory.Alloc(Size, (nuint)sizeof(T));
        _blocks.Enqueue((nint)_newest);
    }

    /// <summary>The place of a sample, which lies in the newest block.</summary>
    public ref T this[int sample] => ref _newest[sample & (Size - 1)];

    /// <summary>All values in one array; no block is left.</summary>
    public T[] ToArray(int count)
    {
        var array = GC.AllocateUninitializedArray<T>(count);
        for (var from = 0; from < count; from += Size)
        {
            var block = _blocks.Dequeue();
            new ReadOnlySpan<T>((T*)block, Math.Min(Size, count - from)).CopyTo(array.AsSpan(from));
            NativeMemory.Free((void*)block);
        }

        Dispose();
        return array;
    }

    public void Dispose()
    {
        while (_blocks.TryDequeue(out var block)) NativeMemory.Free((void*)block);
        _newest = null;
    }
}
