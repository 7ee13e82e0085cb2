using MonitorSim.Plans;
using MonitorSim.Signals;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>The signals of a plan as free inputs, and the settings at which conditions hold or not.</summary>
/// <remarks>Several signals may read one column (<c>equals</c>), so that columns are set, not signals.</remarks>
internal sealed class SignalBoard
{
    private const int MostSettings = 20_000;

    private readonly Dictionary<string, (string Column, SignalReader Reader)> _signals = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, List<string>> _words = new(StringComparer.Ordinal);

    /// <param name="plan">A plan whose signals are all columns.</param>
    public SignalBoard(Plan plan)
    {
        foreach (var (name, signal) in plan.Signals)
        {
            _signals[name] = (signal.Column!, new(signal));
            if (!_words.TryGetValue(signal.Column!, out var words)) _words[signal.Column!] = words = [];
            if (signal.EqualTo is { } word) words.Add(word.Trim());
        }

        foreach (var (column, words) in _words)
        {
            // Plain switches are 0 and 1; a mode is one of its words, or another.
            var plain = _signals.Values.Where(signal => signal.Column == column).Any(signal => signal.Reader.OfWord("0") is not null && signal.Reader.OfWord("other") is null);
            var rest = plain ? (string[])["0", "1"] : ["0", "none", "other"];
            words.InsertRange(0, rest.Where(word => !words.Contains(word)).Take(plain ? 2 : 1));
        }

        Quiet = _words.Aggregate(Setting.Empty, (setting, column) => setting.With(column.Key, column.Value[0]));
    }

    /// <summary>Every column at its first word.</summary>
    public Setting Quiet { get; }

    /// <summary>A signal's value.</summary>
    public bool Signal(Setting setting, string name) => _signals[name].Reader.OfWord(setting.Words[_signals[name].Column]) ?? false;

    /// <summary>The setting with a signal at a value, all other columns as they are; null where no word of its column gives it.</summary>
    public Setting? With(Setting setting, string name, bool value)
    {
        var column = _signals[name].Column;
        return Signal(setting, name) == value ? setting
            : _words[column].Select(word => setting.With(column, word)).FirstOrDefault(other => Signal(other, name) == value);
    }

    /// <summary>What a condition is at a setting, as far as that is known; else null.</summary>
    /// <param name="setting">The signals.</param>
    /// <param name="expression">The condition.</param>
    /// <param name="given">What is known of outputs, trips and states; null: nothing, so that the signals alone decide.</param>
    public bool? Holds(Setting setting, Expression expression, Circumstance? given = null) => expression switch
    {
        Expression.Constant constant => constant.Value,
        Expression.Signal signal => Signal(setting, signal.Name),
        Expression.Not not => !Holds(setting, not.Operand, given),
        Expression.And and => (Holds(setting, and.Left, given), Holds(setting, and.Right, given)) switch { (false, _) or (_, false) => false, (true, true) => true, _ => null },
        Expression.Or or => (Holds(setting, or.Left, given), Holds(setting, or.Right, given)) switch { (true, _) or (_, true) => true, (false, false) => false, _ => null },
        _ => given?.Of(expression),
    };

    /// <summary>The setting that serves best: all that must be is, as little as can be of what should not be, nearest to another setting.</summary>
    /// <param name="involved">The conditions whose signals may change.</param>
    /// <param name="must">What must be.</param>
    /// <param name="cost">How bad a setting is otherwise.</param>
    /// <param name="near">The setting to stay close to.</param>
    public Setting? Find(IEnumerable<Expression> involved, Func<Setting, bool> must, Func<Setting, int> cost, Setting near)
    {
        var columns = involved.SelectMany(SignalsOf).Select(name => _signals[name].Column).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        (Setting? Setting, int Cost, int Distance) best = (null, 0, 0);
        foreach (var setting in All(near, columns).Take(MostSettings))
        {
            if (!must(setting)) continue;
            var (price, distance) = (cost(setting), setting.Distance(near));
            if (best.Setting is null || price < best.Cost || (price == best.Cost && distance < best.Distance)) best = (setting, price, distance);
        }

        return best.Setting;
    }

    private IEnumerable<Setting> All(Setting setting, IReadOnlyList<string> columns, int next = 0) => next == columns.Count
        ? [setting]
        : _words[columns[next]].SelectMany(word => All(setting.With(columns[next], word), columns, next + 1));

    private static IEnumerable<string> SignalsOf(Expression expression) => expression switch
    {
        Expression.Signal signal => [signal.Name],
        Expression.Not not => SignalsOf(not.Operand),
        Expression.And and => SignalsOf(and.Left).Concat(SignalsOf(and.Right)),
        Expression.Or or => SignalsOf(or.Left).Concat(SignalsOf(or.Right)),
        _ => [],
    };
}
