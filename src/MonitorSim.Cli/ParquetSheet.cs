using Parquet;
using Parquet.Schema;

namespace MonitorSim.Cli;

/// <summary>A table as a Parquet file that grows by parts. Seconds are decimals with nine digits behind the point: as doubles they would not be exact.</summary>
internal sealed class ParquetSheet : IDisposable
{
    private const int RowsAGroup = 1 << 16;

    // Nineteen digits hold every number of nanoseconds that 64 bits do.
    private const int Digits = 19;
    private const int DigitsBehindThePoint = 9;
    private readonly OutputFile _file;
    private readonly ParquetWriter _writer;
    private readonly IReadOnlyList<SheetColumn> _columns;
    private readonly DataField[] _fields;
    private readonly List<object?[]> _rows = [];

    public ParquetSheet(string path, IReadOnlyList<SheetColumn> columns, CancellationToken cancel)
    {
        (_columns, _file) = (columns, new(path, cancel));
        var schema = new ParquetSchema(columns.Select(Field));
        _fields = schema.DataFields;
        try
        {
            _writer = ParquetWriter.CreateAsync(schema, _file.Stream).GetAwaiter().GetResult();
        }
        catch
        {
            _file.Dispose();
            throw;
        }
    }

    /// <summary>Adds rows.</summary>
    public void Add(IEnumerable<object?[]> rows)
    {
        foreach (var row in rows)
        {
            _rows.Add(row);
            if (_rows.Count == RowsAGroup) WriteGroup();
        }
    }

    /// <summary>Writes what is left, and the footer.</summary>
    public void End()
    {
        if (_rows.Count > 0) WriteGroup();
        _writer.DisposeAsync().AsTask().GetAwaiter().GetResult();
    }

    /// <summary>After <see cref="End"/>: the file takes its name.</summary>
    public void Complete() => _file.Complete();

    // The writer would write a footer to what nobody will read.
    public void Dispose() => _file.Dispose();

    private static Field Field(SheetColumn column) => column.Type switch
    {
        CellType.Text => new DataField(column.Name, typeof(string), isNullable: true),
        CellType.Count => new DataField(column.Name, typeof(int), isNullable: true),
        CellType.Number => new DataField(column.Name, typeof(double), isNullable: true),
        CellType.Flag => new DataField(column.Name, typeof(bool), isNullable: true),
        _ => new DecimalDataField(column.Name, Digits, DigitsBehindThePoint, isNullable: true),
    };

    private void WriteGroup()
    {
        Write().GetAwaiter().GetResult();
        _rows.Clear();
    }

    private async Task Write()
    {
        using var group = _writer.CreateRowGroup();
        for (var i = 0; i < _columns.Count; i++)
        {
            switch (_columns[i].Type)
            {
                case CellType.Text: await group.WriteAsync(_fields[i], [.. _rows.Select(row => (string?)row[i])]).ConfigureAwait(false); break;
                case CellType.Count: await Values<int>(i).ConfigureAwait(false); break;
                case CellType.Number: await Values<double>(i).ConfigureAwait(false); break;
                case CellType.Flag: await Values<bool>(i).ConfigureAwait(false); break;
                default: await Values<decimal>(i).ConfigureAwait(false); break;
            }
        }

        ValueTask Values<T>(int column) where T : struct => new(group.WriteAsync<T>(_fields[column], _rows.Select(row => (T?)row[column]).ToArray().AsMemory()));
    }
}
