using System.Text;
using System.Text.Json;

namespace MonitorSim.Plans;

/// <summary>A JSON value with its place: line and column count from 1, columns in characters.</summary>
internal abstract record JsonTree(int Line, int Column)
{
    /// <summary>What it is, for messages.</summary>
    public abstract string Noun { get; }

    public sealed record Object(int Line, int Column, IReadOnlyList<Member> Members) : JsonTree(Line, Column)
    {
        public override string Noun => "an object";

        public JsonTree? Find(string name) => Members.FirstOrDefault(member => member.Name == name)?.Value;
    }

    public sealed record Member(string Name, int Line, int Column, JsonTree Value);

    public sealed record Array(int Line, int Column, IReadOnlyList<JsonTree> Items) : JsonTree(Line, Column)
    {
        public override string Noun => "a list";
    }

    public sealed record Text(int Line, int Column, string Value) : JsonTree(Line, Column)
    {
        public override string Noun => $"the text \"{(Value.Length <= 40 ? Value : Value[..39] + "…")}\"";
    }

    public sealed record Number(int Line, int Column, string Value) : JsonTree(Line, Column)
    {
        public override string Noun => $"the number {Value}";
    }

    public sealed record Flag(int Line, int Column, bool Value) : JsonTree(Line, Column)
    {
        public override string Noun => Value ? "true" : "false";
    }

    public sealed record Null(int Line, int Column) : JsonTree(Line, Column)
    {
        public override string Noun => "null";
    }

    /// <summary>Reads JSON with comments and trailing commas.</summary>
    /// <exception cref="InputException">It is not JSON: one problem, at the place where reading stopped.</exception>
    public static JsonTree Read(string text, string fileName)
    {
        var utf8 = Encoding.UTF8.GetBytes(text);
        var lines = new LineIndex(utf8);
        var reader = new Utf8JsonReader(utf8, new JsonReaderOptions { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip, MaxDepth = 64 });
        try
        {
            reader.Read();
            var tree = Next(ref reader, lines);
            reader.Read();
            return tree;
        }
        catch (JsonException e)
        {
            var (line, column) = lines.Place((int)(e.LineNumber ?? 0), (int)(e.BytePositionInLine ?? 0));
            // The reader's sentence ends with its own idea of the place.
            var said = e.Message.Split(" LineNumber:")[0].TrimEnd('.', ' ');
            throw new InputException(new Problem($"{fileName}({line},{column})", $"this is not JSON: {said}", "comments and trailing commas are allowed, all else is as in JSON"));
        }
        catch (InvalidOperationException)
        {
            var (line, column) = lines.Place(reader.TokenStartIndex);
            throw new InputException(new Problem($"{fileName}({line},{column})", "this text holds characters that are none", "write whole Unicode characters"));
        }
    }

    private static JsonTree Next(ref Utf8JsonReader reader, LineIndex lines)
    {
        var (line, column) = lines.Place(reader.TokenStartIndex);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                var members = new List<Member>();
                while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
                {
                    var (nameLine, nameColumn) = lines.Place(reader.TokenStartIndex);
                    var name = reader.GetString()!;
                    reader.Read();
                    members.Add(new(name, nameLine, nameColumn, Next(ref reader, lines)));
                }

                return new Object(line, column, members);
            case JsonTokenType.StartArray:
                var items = new List<JsonTree>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray) items.Add(Next(ref reader, lines));
                return new Array(line, column, items);
            case JsonTokenType.String: return new Text(line, column, reader.GetString()!);
            case JsonTokenType.Number: return new Number(line, column, Encoding.UTF8.GetString(reader.ValueSpan));
            case JsonTokenType.True or JsonTokenType.False: return new Flag(line, column, reader.TokenType == JsonTokenType.True);
            default: return new Null(line, column);
        }
    }

    /// <summary>Turns byte positions into lines and columns.</summary>
    private sealed class LineIndex
    {
        private readonly byte[] _utf8;
        private readonly List<int> _starts = [0];

        public LineIndex(byte[] utf8)
        {
            _utf8 = utf8;
            for (var i = 0; i < utf8.Length; i++)
                if (utf8[i] == '\n') _starts.Add(i + 1);
        }

        public (int Line, int Column) Place(long position)
        {
            var line = _starts.BinarySearch((int)position);
            if (line < 0) line = ~line - 1;
            return Place(line, (int)position - _starts[line]);
        }

        // Where a text ends within a comment the reader names a line that is not there: the end is meant.
        public (int Line, int Column) Place(int line, int bytes) => line < _starts.Count
            ? (line + 1, 1 + Encoding.UTF8.GetCharCount(_utf8, _starts[line], Math.Min(bytes, _utf8.Length - _starts[line])))
            : Place(_starts.Count - 1, _utf8.Length);
    }
}
