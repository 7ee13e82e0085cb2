using System.Reflection;
using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Monitors;
using MonitorSim.Replays;

namespace MonitorSim.Tests.Replays;

/// <summary>What a function or an estimator remembers from cycle to cycle goes with a checkpoint: whoever has a field that changes says so.</summary>
public sealed class RememberedTests
{
    private static readonly Type[] Found =
        [.. typeof(Measures).Assembly.GetTypes().Where(type => (type.IsSubclassOf(typeof(Measures)) || type.IsSubclassOf(typeof(DerivedChannel))) && Memory(type).Any())];

    public static TheoryData<Type> WithMemory => new(Found);

    [Theory]
    [MemberData(nameof(WithMemory))]
    public void It_is_carried(Type type)
    {
        Assert.Equal(type, Declaring(type, "Carry", typeof(Checkpoint)));
        if (Memory(type).Any(field => field.FieldType == typeof(Reading?))) Assert.Equal(type, Declaring(type, "LetGo"));
    }

    [Fact]
    public void There_are_some() => Assert.Contains(typeof(SosMeasures), Found);

    // Parameters of a primary constructor are fields too, though nothing changes them.
    private static IEnumerable<FieldInfo> Memory(Type type) =>
        type.GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.DeclaredOnly).Where(field => !field.IsInitOnly && !field.Name.StartsWith('<'));

    private static Type? Declaring(Type type, string method, params Type[] parameters) =>
        type.GetMethod(method, BindingFlags.Instance | BindingFlags.Public, parameters)?.DeclaringType;
}
