using System.Text;

namespace MonitorSim.Plans;

/// <summary>Reads expressions: <c>not</c> binds before <c>and</c>, <c>and</c> before <c>or</c>.</summary>
internal sealed class ConditionParser
{
    private const int DeepestNesting = 64;
    private const int MostTerms = 1000;

    private enum TokenKind { End, Name, Quoted, Dot, Open, Close, Equal, NotEqual }

    private readonly record struct Token(TokenKind Kind, string Text, int At);

    private readonly string _text;
    private readonly List<Token> _tokens = [];
    private int _next;
    private int _terms;

    private ConditionParser(string text) => _text = text;

    /// <summary>Reads an expression.</summary>
    /// <exception cref="FormatException">Not an expression; the message says where and what would do.</exception>
    public static Expression Parse(string text)
    {
        var parser = new ConditionParser(text);
        parser.Tokenise();
        var root = parser.Or(0);
        return parser.Peek.Kind == TokenKind.End ? root : throw parser.Unexpected("write 'and' or 'or' between two conditions");
    }

    /// <summary>A name as an expression writes it: quoted where it holds other characters than letters, digits and _, or is a keyword.</summary>
    public static string Quote(string name) =>
        name.Length > 0 && name.All(IsNameCharacter) && !IsKeyword(name) ? name : $"\"{name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private Token Peek => _tokens[_next];

    private static bool IsNameCharacter(char c) => char.IsLetterOrDigit(c) || c == '_';

    private static bool IsKeyword(string word) => word is "and" or "or" or "not" or "always" or "never";

    private static bool Is(Token token, string keyword) => token.Kind == TokenKind.Name && token.Text == keyword;

    private Expression Or(int depth)
    {
        var left = And(depth);
        while (Is(Peek, "or"))
        {
            _next++;
            left = new Expression.Or(left, And(depth));
        }

        return left;
    }

    private Expression And(int depth)
    {
        var left = Not(depth);
        while (Is(Peek, "and"))
        {
            _next++;
            left = new Expression.And(left, Not(depth));
        }

        return left;
    }

    private Expression Not(int depth)
    {
        if (depth > DeepestNesting || ++_terms > MostTerms) throw Fail(Peek.At, "too many conditions in one another", "write a simpler expression");
        if (Is(Peek, "not"))
        {
            _next++;
            return new Expression.Not(Not(depth + 1));
        }

        if (Peek.Kind == TokenKind.Open)
        {
            var open = Peek.At;
            _next++;
            var inner = Or(depth + 1);
            if (Peek.Kind != TokenKind.Close)
                throw Peek.Kind == TokenKind.End ? Fail(open, "'(' is not closed", "add ')'") : Unexpected("write 'and', 'or' or ')'");
            _next++;
            return inner;
        }

        return Term();
    }

    private Expression Term()
    {
        var name = Peek;
        if (name.Kind is not (TokenKind.Name or TokenKind.Quoted) || (name.Kind == TokenKind.Name && name.Text is "and" or "or"))
            throw Unexpected("write a signal, axis.monitor, axis.state == TorqueOff, always, never or '('");
        _next++;
        if (Peek.Kind == TokenKind.Dot) return Member(name);
        if (Peek.Kind is TokenKind.Equal or TokenKind.NotEqual)
            throw Fail(Peek.At, $"'{Peek.Text}' compares '{name.Text}', which is no state", "compare a state, as in axis.state == TorqueOff; a signal stands alone or after 'not'");
        if (name.Kind == TokenKind.Name && name.Text is "always" or "never") return new Expression.Constant(name.Text == "always");
        if (name.Kind == TokenKind.Name && name.Text.ToLowerInvariant() is var lower && IsKeyword(lower) && lower != name.Text)
            throw Fail(name.At, $"'{name.Text}' is no keyword", $"keywords are lower-case: write '{lower}', or quote a name");
        return new Expression.Signal(name.Text);
    }

    private Expression Member(Token axis)
    {
        _next++;
        var member = Peek;
        if (member.Kind is not (TokenKind.Name or TokenKind.Quoted)) throw Unexpected($"write a monitor of '{axis.Text}', or state");
        _next++;
        if (member is not { Kind: TokenKind.Name, Text: "state" })
        {
            if (Peek.Kind is TokenKind.Equal or TokenKind.NotEqual)
                throw Fail(Peek.At, $"'{Peek.Text}' compares '{member.Text}', which is no state", "compare a state, as in axis.state == TorqueOff");
            return new Expression.Monitor(axis.Text, member.Text);
        }

        if (Peek.Kind is not (TokenKind.Equal or TokenKind.NotEqual))
            throw Unexpected("compare the state: == or != and one of " + string.Join(", ", Enum.GetNames<AxisState>()));
        var equal = Peek.Kind == TokenKind.Equal;
        _next++;
        var state = Peek;
        var names = Enum.GetNames<AxisState>();
        if (state.Kind is not TokenKind.Name || !names.Contains(state.Text, StringComparer.Ordinal))
        {
            var advice = state.Kind == TokenKind.Name && ClosestName.Of(state.Text, names) is { } closest ? $"did you mean '{closest}'?" : "states are: " + string.Join(", ", names);
            throw state.Kind == TokenKind.Name ? Fail(state.At, $"'{state.Text}' is no state", advice) : Unexpected(advice);
        }

        _next++;
        return new Expression.State(axis.Text, Enum.Parse<AxisState>(state.Text), equal);
    }

    private void Tokenise()
    {
        var at = 0;
        while (at < _text.Length)
        {
            var c = _text[at];
            if (char.IsWhiteSpace(c)) { at++; continue; }
            var from = at;
            if (IsNameCharacter(c))
            {
                while (at < _text.Length && IsNameCharacter(_text[at])) at++;
                _tokens.Add(new(TokenKind.Name, _text[from..at], from));
                continue;
            }

            if (c == '"') { at = Quoted(from); continue; }
            var next = at + 1 < _text.Length ? _text[at + 1] : ' ';
            var kind = (c, next) switch
            {
                ('.', _) => TokenKind.Dot,
                ('(', _) => TokenKind.Open,
                (')', _) => TokenKind.Close,
                ('=', '=') => TokenKind.Equal,
                ('!', '=') => TokenKind.NotEqual,
                ('=', _) => throw Fail(at, "'=' compares nothing", "write '=='"),
                ('!', _) => throw Fail(at, "'!' is no operator", "write 'not'"),
                ('&', _) => throw Fail(at, "'&' is no operator", "write 'and'"),
                ('|', _) => throw Fail(at, "'|' is no operator", "write 'or'"),
                _ => throw Fail(at, $"'{c}' belongs to no name", "quote names of other characters than letters, digits and _, as in \"set-up speed\""),
            };
            at += kind is TokenKind.Equal or TokenKind.NotEqual ? 2 : 1;
            _tokens.Add(new(kind, _text[from..at], from));
        }

        _tokens.Add(new(TokenKind.End, "", _text.Length));
    }

    private int Quoted(int from)
    {
        var name = new StringBuilder();
        for (var at = from + 1; at < _text.Length; at++)
        {
            if (_text[at] == '"')
            {
                _tokens.Add(new(TokenKind.Quoted, name.ToString(), from));
                return at + 1;
            }

            if (_text[at] == '\\' && at + 1 < _text.Length && _text[at + 1] is '"' or '\\') at++;
            name.Append(_text[at]);
        }

        throw Fail(from, "the quoted name is not closed", "add '\"'");
    }

    private FormatException Unexpected(string fix) =>
        Peek.Kind == TokenKind.End ? Fail(Peek.At, "the expression ends too early", fix) : Fail(Peek.At, $"'{Peek.Text}' is out of place", fix);

    private static FormatException Fail(int at, string what, string fix) => new($"{what} (character {at + 1} of the expression); {fix}");
}
