using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using SpecLint.Tests.Support;

namespace SpecLint.Tests.House;

/// <summary>
/// What the library offers to a program stands in a file. A change of it is seen in review, and an unannounced one fails here:
/// <c>SPECLINT_UPDATE=1</c> writes the file after the change was meant, and <c>rules-docs/changes.md</c> says so.
/// </summary>
public sealed class PublicApiTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    [Theory]
    [InlineData("SpecLint")]
    [InlineData("SpecLint.Science")]
    public void The_public_members_are_those_of_the_baseline(string assembly) =>
        Golden.Check(
            Repository.At("src", assembly, "PublicApi.txt"),
            Text(assembly == "SpecLint" ? typeof(Checker).Assembly : typeof(SpecLint.Science.Component).Assembly));

    private static string Text(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (var type in assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            string kind = type.IsEnum
                ? "enum"
                : type.IsInterface
                    ? "interface"
                    : type.IsValueType
                        ? "struct"
                        : type.IsAbstract && type.IsSealed ? "static class" : type.IsAbstract ? "abstract class" : "class";
            string parents = string.Join(
                ", ",
                new[] { type.BaseType }
                    .Where(b => b is not null && b != typeof(object) && b != typeof(ValueType) && b != typeof(Enum))
                    .Select(b => Name(b!)));
            text.Append(kind).Append(' ').Append(Name(type)).Append(parents.Length > 0 ? " : " + parents : "").Append('\n');
            foreach (string member in type.GetMembers(Declared).Where(IsOffered).Select(Signature).Order(StringComparer.Ordinal))
                text.Append("    ").Append(member).Append('\n');
        }

        return text.ToString();
    }

    private static bool IsOffered(MemberInfo member) =>
        !member.IsDefined(typeof(CompilerGeneratedAttribute), false)
            && !member.Name.Contains('<', StringComparison.Ordinal)
            && member switch
            {
                MethodBase { IsSpecialName: true } method when member is MethodInfo => IsSeen(method) && method.Name.StartsWith("op_", StringComparison.Ordinal),
                MethodBase method => IsSeen(method),
                FieldInfo field => (field.IsPublic || field.IsFamily || field.IsFamilyOrAssembly) && !field.IsSpecialName,
                PropertyInfo property => property.GetAccessors(nonPublic: true).Any(IsSeen),
                _ => false,
            };

    private static bool IsSeen(MethodBase method) => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;

    private static string Signature(MemberInfo member) => member switch
    {
        MethodInfo method => $"{(method.IsStatic ? "static " : "")}{Name(method.ReturnType)} {method.Name}{Generic(method)}({Parameters(method)})",
        ConstructorInfo constructor => $"new({Parameters(constructor)})",
        FieldInfo { IsLiteral: true, DeclaringType.IsEnum: true } value =>
            $"{value.Name} = {Convert.ToInt64(value.GetRawConstantValue(), System.Globalization.CultureInfo.InvariantCulture)}",
        FieldInfo field => $"{(field.IsStatic ? "static " : "")}{Name(field.FieldType)} {field.Name}",
        PropertyInfo property =>
            $"{(property.GetAccessors(true)[0].IsStatic ? "static " : "")}{Name(property.PropertyType)} "
                + $"{property.Name}{(property.GetIndexParameters().Length > 0 ? $"[{string.Join(", ", property.GetIndexParameters().Select(p => Name(p.ParameterType)))}]" : "")} {{{Accessors(property)} }}",
        _ => member.Name,
    };

    private static string Accessors(PropertyInfo property)
    {
        string text = property.GetMethod is { } get && IsSeen(get) ? " get;" : "";
        if (property.SetMethod is not { } set || !IsSeen(set)) return text;
        return text + (set.ReturnParameter.GetRequiredCustomModifiers().Any(m => m.Name == "IsExternalInit") ? " init;" : " set;");
    }

    private static string Generic(MethodInfo method) =>
        method.IsGenericMethod ? $"<{string.Join(", ", method.GetGenericArguments().Select(a => a.Name))}>" : "";

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}{(p.IsOptional ? " = …" : "")}"));

    private static string Name(Type type)
    {
        if (type.IsByRef) return "ref " + Name(type.GetElementType()!);
        if (type.IsArray) return Name(type.GetElementType()!) + "[]";
        if (type.IsGenericParameter) return type.Name;
        string name = type.FullName is { } full && type.Namespace?.StartsWith("SpecLint", StringComparison.Ordinal) == true ? full.Split('[')[0] : type.Name;
        int tick = name.IndexOf('`', StringComparison.Ordinal);
        if (type.IsGenericType && tick >= 0) name = $"{name[..tick]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>";
        return name.Replace('+', '.');
    }
}
