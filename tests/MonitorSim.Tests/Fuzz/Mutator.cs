using System.Text;

namespace MonitorSim.Tests.Fuzz;

/// <summary>Damages a text the way that disks, transfers, editors and people do; seeded, so that a failing seed can be run again.</summary>
internal sealed class Mutator(int seed)
{
    private static readonly byte[][] Pieces =
    [
        .. new[]
        {
            "", "-", "+", ".", ",", ";", "\"", "\"\"", "\n", "\r", "\r\n", "\t", "\0", "NaN", "nan", "Infinity", "1e400", "-1e-400", "0x10", "1_000", "99999999999999999999999999", "-0", "null",
            "true", "{", "}", "[", "]", "[[[[[[[[", "{\"a\":", "//", "/*", "\\u0000", "\\ud800", "é", "µ", "°", "\uFEFF", "and", "not", "((((", "))))", "mm/s", "1 parsec", " ", "=1+1", "<script>",
        }.Select(Encoding.UTF8.GetBytes),
        [0xff], [0xc3], [0xed, 0xa0, 0x80], [0x1f, 0x8b, 8], [0x89, 0x48, 0x44, 0x46],
    ];

    private readonly Random _dice = new(seed);

    /// <summary>The text with one to six injuries.</summary>
    public byte[] Of(byte[] text)
    {
        var bytes = text.ToList();
        for (var injuries = 1 + _dice.Next(6); injuries > 0; injuries--) Injure(bytes);
        return [.. bytes];
    }

    private void Injure(List<byte> bytes)
    {
        var at = _dice.Next(bytes.Count + 1);
        var length = Math.Min(_dice.Next(1, 40), bytes.Count - at);
        switch (_dice.Next(7))
        {
            case 0 when at < bytes.Count: bytes[at] ^= (byte)(1 << _dice.Next(8)); break;
            case 1: bytes.RemoveRange(at, length); break;
            case 2: bytes.InsertRange(at, Pieces[_dice.Next(Pieces.Length)]); break;
            case 3: bytes.InsertRange(at, bytes.GetRange(at, length)); break;
            case 4: bytes.RemoveRange(at, bytes.Count - at); break;
            case 5 when at < bytes.Count:
                bytes.RemoveAt(at);
                bytes.InsertRange(at, Pieces[_dice.Next(Pieces.Length)]);
                break;
            default:
                var moved = bytes.GetRange(at, length);
                bytes.RemoveRange(at, length);
                bytes.InsertRange(_dice.Next(bytes.Count + 1), moved);
                break;
        }
    }
}
