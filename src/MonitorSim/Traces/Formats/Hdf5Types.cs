using System.Text;
using PureHDF;
using PureHDF.Selections;

namespace MonitorSim.Traces.Formats;

/// <summary>How values of an HDF5 dataset are read, by their type.</summary>
internal static class Hdf5Types
{
    /// <summary>What reads them; null where they are neither numbers, text nor codes with words.</summary>
    public static Func<Selection, Values>? Reading(IH5Dataset dataset)
    {
        var type = dataset.Type;
        return type.Class switch
        {
            H5DataTypeClass.FloatingPoint => type.Size switch
            {
                8 => Numbers<double>(dataset),
                4 => Numbers<float>(dataset),
                2 => Numbers<Half>(dataset),
                _ => null,
            },
            H5DataTypeClass.FixedPoint => (type.Size, type.FixedPoint.IsSigned) switch
            {
                (8, true) => Numbers<long>(dataset),
                (8, false) => Numbers<ulong>(dataset),
                (4, true) => Numbers<int>(dataset),
                (4, false) => Numbers<uint>(dataset),
                (2, true) => Numbers<short>(dataset),
                (2, false) => Numbers<ushort>(dataset),
                (1, true) => Numbers<sbyte>(dataset),
                (1, false) => Numbers<byte>(dataset),
                _ => null,
            },
            H5DataTypeClass.Enumerated when type.Size == 1 => Codes<sbyte>(dataset, code => code),
            H5DataTypeClass.Enumerated when type.Size == 2 => Codes<short>(dataset, code => code),
            H5DataTypeClass.Enumerated when type.Size == 4 => Codes<int>(dataset, code => code),
            _ when IsText(type) => rows => new TextValues(dataset.Read<string[]>(rows)),
            _ => null,
        };
    }

    /// <summary>Whether they are numbers.</summary>
    public static bool IsNumeric(IH5Dataset dataset) => dataset.Type.Class is H5DataTypeClass.FloatingPoint or H5DataTypeClass.FixedPoint;

    /// <summary>Whether it is text, of fixed or of varying length.</summary>
    public static bool IsText(IH5DataType type) => type.Class == H5DataTypeClass.String
        || (type.Class == H5DataTypeClass.VariableLength && type.VariableLength.BaseType is { Class: H5DataTypeClass.String or H5DataTypeClass.FixedPoint, Size: 1 });

    private static Func<Selection, Values> Numbers<T>(IH5Dataset dataset) where T : unmanaged, IUtf8SpanFormattable =>
        rows => new NumberValues<T>(dataset.Read<T[]>(rows), null);

    private static Func<Selection, Values> Codes<T>(IH5Dataset dataset, Converter<T, long> widen) where T : unmanaged
    {
        var words = dataset.Type.Enumeration.GetMembers<T>().GroupBy(member => widen(member.Value)).ToDictionary(same => same.Key, same => Encoding.UTF8.GetBytes(same.First().Key));
        return rows => new CodedValues(Array.ConvertAll(dataset.Read<T[]>(rows), widen), null, words);
    }
}
