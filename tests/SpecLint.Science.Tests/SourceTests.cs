using System.Reflection;
using System.Runtime.CompilerServices;

namespace SpecLint.Science.Tests;

public sealed class SourceTests
{
    [Fact]
    public void Every_public_function_names_its_source()
    {
        var missing = (
            from type in typeof(Components).Assembly.GetExportedTypes()
            where type is { IsEnum: false } && !typeof(Delegate).IsAssignableFrom(type) && !typeof(Attribute).IsAssignableFrom(type)
            from method in type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly)
            where !method.IsSpecialName && !method.IsDefined(typeof(CompilerGeneratedAttribute))
            where !IsUnitFactory(type, method)
            where !HasSource(method) && !HasSource(type) && !(type.DeclaringType is { } outer && HasSource(outer))
            select $"{type.Name}.{method.Name}").ToList();
        Assert.True(missing.Count == 0, "No [Source] on: " + string.Join(", ", missing));
    }

    [Fact]
    public void A_source_says_more_than_a_name()
    {
        foreach (var member in typeof(Components).Assembly
            .GetTypes()
            .SelectMany(t => t.GetMembers(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance).Prepend(t)))
        {
            foreach (var source in member.GetCustomAttributes<SourceAttribute>())
                Assert.True(source.Citation.Length >= 12, $"{member.Name}: {source.Citation}");
        }
    }

    private static bool HasSource(MemberInfo member) => member.IsDefined(typeof(SourceAttribute), inherit: false);

    // A unit given in another unit (a strength from per cent): arithmetic, named in the unit.
    private static bool IsUnitFactory(Type type, MethodInfo method) =>
        type.IsValueType && method.IsStatic && method.ReturnType == type && method.GetParameters() is [{ } only] && only.ParameterType == typeof(double);
}
