using PureHDF;
using PureHDF.Selections;

namespace MonitorSim.Traces.Formats;

/// <summary>An HDF5 file, MAT 7.3 among them: each dataset of one dimension in the one group that has such is a column. Of two dimensions of which one is 1
/// counts as one. What stands in another file does not belong to the recording.</summary>
internal sealed class Hdf5Table : BinaryTable
{
    private const int BlockLength = 1 << 18;
    private readonly CountingStream _bytes;
    private readonly IDisposable _file;
    private readonly List<TableColumn> _columns = [];

    /// <param name="stream">The file's bytes; it can seek. Left open.</param>
    /// <exception cref="InputException">No group has datasets of one dimension, or several have.</exception>
    public Hdf5Table(Stream stream)
    {
        _bytes = new CountingStream(stream);
        var file = H5File.Open(_bytes, leaveOpen: true);
        _file = file;
        var group = Hdf5Groups.TheOne(file);
        foreach (var dataset in group.Datasets)
        {
            var column = new DatasetColumn(dataset.Name, UnitOf(dataset), Hdf5Groups.LengthOf(dataset)!.Value, Hdf5Types.IsNumeric(dataset), dataset, Hdf5Types.Reading(dataset)!);
            if (WhyUnreadable(column) is { } why) LeaveOut(dataset.Name, why);
            else _columns.Add(column);
        }

        foreach (var (name, why) in group.LeftOut) LeaveOut(name, why);
        if (group.Path != "/") Notes.Add($"columns are the datasets of the group '{group.Path}'");
    }

    public override string Format => "HDF5";

    public override IReadOnlyList<TableColumn> Columns => _columns;

    public override IEnumerable<int> Blocks(long length)
    {
        for (var from = 0L; from < length; from += BlockLength) yield return (int)Math.Min(BlockLength, length - from);
    }

    public override Values Read(TableColumn column, int block, long from, int count)
    {
        var dataset = (DatasetColumn)column;
        return dataset.Read(Rows(dataset.Dataset, (ulong)from, (ulong)count));
    }

    public override void Dispose() => _file.Dispose();

    // Big-endian numbers and filters of others are found out by reading a first value, before a plan asks for the column.
    private string? WhyUnreadable(DatasetColumn column)
    {
        var before = _bytes.Count;
        try
        {
            _ = Read(column, 0, 0, 1);
        }
        catch (Exception)
        {
            // What the library says then is advice to programmers.
            return "cannot be read: its numbers have the high byte first, a filter is not one of HDF5's own, or it is damaged";
        }

        return column.Dataset.Layout.Class != H5DataLayoutClass.Compact && _bytes.Count == before ? "has no values in this file" : null;
    }

    private static HyperslabSelection Rows(IH5Dataset dataset, ulong from, ulong count)
    {
        var dimensions = dataset.Space.Dimensions;
        if (dimensions.Length == 1) return new(from, count);
        return dimensions[0] == 1 ? new(2, [0, from], [1, count]) : new(2, [from, 0], [count, 1]);
    }

    private static string? UnitOf(IH5Object dataset)
    {
        foreach (var name in new[] { "unit", "units" })
        {
            if (dataset.AttributeExists(name) && dataset.Attribute(name) is { } stated && Hdf5Types.IsText(stated.Type) && stated.Space.Rank == 0
                && stated.Read<string>().Trim() is { Length: > 0 } unit) return unit;
        }

        return null;
    }

    private sealed record DatasetColumn(string Name, string? Unit, long Length, bool IsNumeric, IH5Dataset Dataset, Func<Selection, Values> Read) : TableColumn(Name, Unit, Length, IsNumeric);
}
