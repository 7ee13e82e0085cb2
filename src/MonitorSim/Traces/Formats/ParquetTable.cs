using Parquet;
using Parquet.Schema;

namespace MonitorSim.Traces.Formats;

/// <summary>A Parquet file: each column at its top is one of the recording, in blocks as the file has row groups.</summary>
internal sealed class ParquetTable : BinaryTable
{
    private static readonly Dictionary<long, byte[]> Switch = new() { [0] = "false"u8.ToArray(), [1] = "true"u8.ToArray() };
    private readonly Stream _bytes;
    private readonly ParquetReader _file;
    private readonly List<TableColumn> _columns = [];

    /// <param name="stream">The file's bytes; it can seek. Left open.</param>
    public ParquetTable(Stream stream)
    {
        ParquetCheck.Footer(stream);
        _bytes = stream;
        _file = ParquetReader.CreateAsync(stream, new ParquetOptions { UseDateOnlyTypeForDates = false }, leaveStreamOpen: true).GetAwaiter().GetResult();
        var rows = Enumerable.Range(0, _file.RowGroupCount).Sum(Rows);
        foreach (var field in _file.Schema.Fields)
        {
            if (field is not DataField { MaxRepetitionLevel: 0 } flat) LeaveOut(field.Name, "holds lists or records, not one value a row");
            else if (Reading(flat) is not { } read) LeaveOut(field.Name, $"is of a type that is neither number, text, date-time nor boolean: {TypeOf(flat)}");
            else _columns.Add(new FlatColumn(field.Name, rows, flat.ClrType != typeof(bool) && flat.ClrType != typeof(ReadOnlyMemory<char>) && flat is not DateTimeDataField, flat, read));
        }
    }

    public override string Format => "Parquet";

    public override IReadOnlyList<TableColumn> Columns => _columns;

    public override IEnumerable<int> Blocks(long length) => Enumerable.Range(0, _file.RowGroupCount).Select(group => checked((int)Rows(group)));

    public override Values Read(TableColumn column, int block, long from, int count)
    {
        using var group = _file.OpenRowGroupReader(block);
        var flat = (FlatColumn)column;
        ParquetCheck.Pages(_bytes, group.GetMetadata(flat.Field)?.MetaData ?? throw new InvalidDataException("it has no values"));
        return flat.Read(group, count);
    }

    public override void Dispose() => _file.DisposeAsync().AsTask().GetAwaiter().GetResult();

    private long Rows(int group)
    {
        using var reader = _file.OpenRowGroupReader(group);
        return reader.RowCount >= 0 ? reader.RowCount : throw new InvalidDataException($"row group {group} says that it has {reader.RowCount} rows");
    }

    private static string TypeOf(DataField field) =>
        field.SchemaElement is { } element ? string.Join(' ', new object?[] { element.Type, element.ConvertedType }.Where(part => part is not null)) : field.ClrType.Name;

    private static Func<ParquetRowGroupReader, int, Values>? Reading(DataField field)
    {
        if (field is DateTimeDataField moment) return Moments(moment);
        if (field is TimeDataField) return null;
        return field.ClrType switch
        {
            var type when type == typeof(double) => Numbers<double>(field),
            var type when type == typeof(float) => Numbers<float>(field),
            var type when type == typeof(decimal) => Numbers<decimal>(field),
            var type when type == typeof(sbyte) => Numbers<sbyte>(field),
            var type when type == typeof(byte) => Numbers<byte>(field),
            var type when type == typeof(short) => Numbers<short>(field),
            var type when type == typeof(ushort) => Numbers<ushort>(field),
            var type when type == typeof(int) => Numbers<int>(field),
            var type when type == typeof(uint) => Numbers<uint>(field),
            var type when type == typeof(long) => Numbers<long>(field),
            var type when type == typeof(ulong) => Numbers<ulong>(field),
            var type when type == typeof(bool) => (group, count) =>
            {
                var (values, missing) = Raw<bool>(group, field, count);
                return new CodedValues(Array.ConvertAll(values, value => value ? 1L : 0L), missing, Switch);
            },
            var type when type == typeof(ReadOnlyMemory<char>) || type == typeof(string) => (group, count) =>
            {
                var values = new string?[count];
                group.ReadAsync(field, values.AsMemory()!).AsTask().GetAwaiter().GetResult();
                return new TextValues(values);
            },
            _ => null,
        };
    }

    private static Func<ParquetRowGroupReader, int, Values> Numbers<T>(DataField field) where T : unmanaged, IUtf8SpanFormattable => (group, count) =>
    {
        var (values, missing) = Raw<T>(group, field, count);
        return new NumberValues<T>(values, missing);
    };

    // Read as the integers that they are: as a DateTime they would lose the last two digits of their nanoseconds.
    private static Func<ParquetRowGroupReader, int, Values>? Moments(DateTimeDataField field)
    {
        if (field.SchemaElement?.Type != Parquet.Meta.Type.INT64) return null;
        var plain = new ParquetSchema(new DataField(field.Name, typeof(long), field.IsNullable)).DataFields[0];
        var digits = field.SchemaElement.LogicalType?.TIMESTAMP?.Unit is { NANOS: not null } ? 9 : field.Unit == DateTimeTimeUnit.Millis ? 3 : 6;
        return (group, count) =>
        {
            var (values, missing) = Raw<long>(group, plain, count);
            return new MomentValues(values, missing, digits);
        };
    }

    // The file holds only those that are there, and beside them which are.
    private static (T[] Values, bool[]? Missing) Raw<T>(ParquetRowGroupReader group, DataField field, int count) where T : struct
    {
        var values = new T[count];
        if (!field.IsNullable)
        {
            group.ReadRawAsync<T>(field, values, null, null).AsTask().GetAwaiter().GetResult();
            return (values, null);
        }

        var levels = new int[count];
        group.ReadRawAsync<T>(field, values, levels.AsMemory(), null).AsTask().GetAwaiter().GetResult();
        var there = levels.AsSpan().Count(field.MaxDefinitionLevel);
        if (there == count) return (values, null);
        var missing = new bool[count];
        for (var i = count - 1; i >= 0; i--)
        {
            missing[i] = levels[i] != field.MaxDefinitionLevel;
            if (!missing[i]) values[i] = values[--there];
        }

        return (values, missing);
    }

    private sealed record FlatColumn(string Name, long Length, bool IsNumeric, DataField Field, Func<ParquetRowGroupReader, int, Values> Read) : TableColumn(Name, null, Length, IsNumeric);
}
