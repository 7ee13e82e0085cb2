using System.Text.RegularExpressions;
using Fractions;

namespace MonitorSim.Quantities;

/// <summary>Reads units: symbols with exponents, joined by <c>·</c>, <c>*</c> or a space, and <c>/</c>, with brackets.</summary>
/// <remarks>A stroke takes only the next factor into the denominator: kg/m·s is (kg/m)·s; write kg/(m·s) for the other.</remarks>
internal sealed partial class UnitParser
{
    private const int DeepestNesting = 8;
    private const int LongestUnit = 60;

    // Speeds in turns per minute are written as if they were frequencies.
    private static readonly HashSet<string> TurnsPerMinute = new(StringComparer.Ordinal) { "1/min", "/min", "min⁻¹", "min^-1", "min-1", "U/min" };

    private readonly string _text;
    private int _at;
    private string? _unknown;

    private UnitParser(string text) => _text = text;

    [GeneratedRegex(@"^(?<symbol>.*?)(?:\^?(?<digits>-?[0-9])|(?<super>⁻?[¹²³⁴]))?$", RegexOptions.Singleline)]
    private static partial Regex Power();

    [GeneratedRegex(@"\s*([/·*()^])\s*")]
    private static partial Regex AroundOperators();

    /// <summary>Reads a unit; on failure says what is wrong and what would do.</summary>
    public static bool TryParse(string symbol, out Unit? unit, out string? error)
    {
        unit = null;
        error = null;
        var text = Normalise(symbol);
        switch (text)
        {
            case "": error = "no unit; write one, such as mm, deg or ms"; return false;
            case { Length: > LongestUnit }: error = $"'{text[..20]}…' is too long for a unit"; return false;
            case "°C": unit = new(symbol, Dimension.Celsius, 1, 0); return true;
            case "K": unit = new(symbol, Dimension.Celsius, 1, new(-27315, 100)); return true;
            case "°F": unit = new(symbol, Dimension.Celsius, new(5, 9), new(-160, 9)); return true;
            case var _ when TurnsPerMinute.Contains(text): text = "rpm"; break;
        }

        var parser = new UnitParser(text);
        if (parser.Product(0) is { } value && parser._at == text.Length && value.Dimension != Dimension.None)
        {
            unit = new(symbol, value.Dimension, value.Factor, 0);
            return true;
        }

        error = parser._unknown is { } unknown ? Unknown(symbol, unknown) : $"'{symbol}' is no unit; write one such as mm/s, N·m or deg";
        return false;
    }

    private static string Unknown(string symbol, string unknown)
    {
        var what = unknown == symbol ? $"unknown unit '{symbol}'" : $"unknown unit '{unknown}' in '{symbol}'";
        return UnitSymbols.Closest(unknown) is { } closest ? $"{what}; did you mean '{closest}'?" : $"{what}; write one such as mm/s, N·m or deg";
    }

    /// <summary>One spelling for characters that look alike, and nothing around operators.</summary>
    private static string Normalise(string symbol)
    {
        var text = symbol.Trim().Replace('\u03BC', 'µ').Replace('\u2126', 'Ω').Replace("Ohm", "Ω", StringComparison.OrdinalIgnoreCase)
            .Replace('\u22C5', '·').Replace('\u2219', '·').Replace('×', '·').Replace("degC", "°C", StringComparison.Ordinal)
            .Replace("degF", "°F", StringComparison.Ordinal).Replace('º', '°');
        return AroundOperators().Replace(text, "$1");
    }

    private UnitSymbols.Symbol? Product(int depth)
    {
        if (depth > DeepestNesting || Factor(depth) is not { } result) return null;
        while (_at < _text.Length && _text[_at] != ')')
        {
            var divide = _text[_at] == '/';
            if (!divide && !IsProduct(_text[_at])) return null;
            _at++;
            if (Factor(depth) is not { } next) return null;
            result = divide
                ? new(result.Dimension / next.Dimension, result.Factor / next.Factor)
                : new(result.Dimension * next.Dimension, result.Factor * next.Factor);
        }

        return result;
    }

    private UnitSymbols.Symbol? Factor(int depth)
    {
        if (_at < _text.Length && _text[_at] == '(')
        {
            _at++;
            var inner = Product(depth + 1);
            if (inner is null || _at >= _text.Length || _text[_at] != ')') return null;
            _at++;
            return inner;
        }

        var from = _at;
        while (_at < _text.Length && _text[_at] is not ('/' or '(' or ')') && !IsProduct(_text[_at])) _at++;
        return Symbol(_text[from.._at]);
    }

    private UnitSymbols.Symbol? Symbol(string text)
    {
        if (text.Length == 0) return null;
        if (text == "1") return new(Dimension.None, 1);
        if (UnitSymbols.TryFind(text, out var found)) return found;
        var match = Power().Match(text);
        if (!UnitSymbols.TryFind(match.Groups["symbol"].Value, out found))
        {
            _unknown ??= match.Groups["symbol"].Value is { Length: > 0 } symbol ? symbol : text;
            return null;
        }

        var exponent = match.Groups["digits"].Success ? int.Parse(match.Groups["digits"].Value, System.Globalization.CultureInfo.InvariantCulture)
            : Superscript(match.Groups["super"].Value);
        if (exponent == 0) return null;
        var result = new UnitSymbols.Symbol(Dimension.None, 1);
        for (var i = 0; i < Math.Abs(exponent); i++)
        {
            result = exponent > 0
                ? new(result.Dimension * found.Dimension, result.Factor * found.Factor)
                : new(result.Dimension / found.Dimension, result.Factor / found.Factor);
        }

        return result;
    }

    private static int Superscript(string text) => text.StartsWith('⁻') ? -Superscript(text[1..]) : 1 + "¹²³⁴".IndexOf(text[0], StringComparison.Ordinal);

    private static bool IsProduct(char c) => c is '·' or '*' || char.IsWhiteSpace(c);
}
