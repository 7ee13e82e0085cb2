using Parquet;
using Parquet.Schema;
using PureHDF;

namespace MonitorSim.Tests.Traces.Formats;

/// <summary>A recording as the bytes of a binary file.</summary>
internal static class BinaryFile
{
    /// <summary>Parquet: columns of doubles (NaN: missing), of 64-bit integers, of booleans or of texts, cut into row groups.</summary>
    public static byte[] Parquet(int rowsAGroup, params (string Name, Array Values)[] columns)
    {
        var fields = columns.Select(column => new DataField(column.Name, column.Values.GetType().GetElementType()!, isNullable: true)).ToArray();
        var bytes = new MemoryStream();
        Write().GetAwaiter().GetResult();
        return bytes.ToArray();

        async Task Write()
        {
            await using var file = await ParquetWriter.CreateAsync(new ParquetSchema(fields), bytes);
            for (var from = 0; from < columns[0].Values.Length; from += rowsAGroup)
            {
                using var group = file.CreateRowGroup();
                foreach (var (field, column) in fields.Zip(columns))
                {
                    var count = Math.Min(rowsAGroup, column.Values.Length - from);
                    switch (column.Values)
                    {
                        case double[] numbers: await group.WriteAsync<double>(field, Nullable(numbers, from, count, value => !double.IsNaN(value))); break;
                        case long[] numbers: await group.WriteAsync<long>(field, Nullable(numbers, from, count, _ => true)); break;
                        case bool[] bits: await group.WriteAsync<bool>(field, Nullable(bits, from, count, _ => true)); break;
                        case string[] texts: await group.WriteAsync(field, texts[from..(from + count)]); break;
                    }
                }
            }
        }
    }

    /// <summary>HDF5: each column a dataset of a group.</summary>
    public static byte[] Hdf5(string group, params (string Name, Array Values)[] columns)
    {
        var inner = new H5Group();
        foreach (var (name, values) in columns) inner[name] = values is bool[] bits ? Array.ConvertAll(bits, bit => bit ? (byte)1 : (byte)0) : values;
        var file = new H5File();
        if (group.Length > 0) file[group] = inner;
        else foreach (var (name, values) in inner) file[name] = values;
        var bytes = new MemoryStream();
        file.Write(bytes);
        return bytes.ToArray();
    }

    private static ReadOnlyMemory<T?> Nullable<T>(T[] values, int from, int count, Func<T, bool> isThere) where T : struct =>
        values[from..(from + count)].Select(value => isThere(value) ? value : (T?)null).ToArray();
}
