using SpecLint.Findings;


namespace SpecLint.Rules;

/// <summary>
/// Declares a rule: all that a rule is, said once above its class. The source generator makes its <see cref="RuleInfo"/> of
/// it, as <c>Rule</c> in the class and as <see cref="Rules.Rule.Info"/>. The class is partial.
/// </summary>
/// <param name="id">Two letters and four digits; never reused.</param>
/// <param name="name">Its name: the mistake, in lower case with hyphens.</param>
/// <param name="title">The mistake in one short sentence.</param>
/// <param name="level">Default level.</param>
[AttributeUsage(AttributeTargets.Class, Inherited = false)]
public sealed class RuleAttribute(string id, string name, string title, Level level) : Attribute
{
    /// <inheritdoc cref="RuleInfo.Id"/>
    public string Id { get; } = id;

    /// <inheritdoc cref="RuleInfo.Name"/>
    public string Name { get; } = name;

    /// <inheritdoc cref="RuleInfo.Title"/>
    public string Title { get; } = title;

    /// <inheritdoc cref="RuleInfo.Level"/>
    public Level Level { get; } = level;

    /// <inheritdoc cref="RuleInfo.Needs"/>
    public Vocabulary.Fact[] Needs { get; set; } = [];

    /// <inheritdoc cref="RuleInfo.Safety"/>
    public bool Safety { get; set; }

    /// <inheritdoc cref="RuleInfo.LeavesHarmUnknown"/>
    public bool LeavesHarmUnknown { get; set; }

    /// <inheritdoc cref="RuleInfo.IsCause"/>
    public bool IsCause { get; set; }

    /// <inheritdoc cref="RuleInfo.IsConsequence"/>
    public bool IsConsequence { get; set; }
}

/// <summary>
/// Declares a limit of the table that a rule, or what rules share, holds recipes against. With a member's name the source
/// generator writes that member, a <see cref="Catalogue.Limit"/>; without one the limit is only listed, since it is read
/// elsewhere.
/// </summary>
/// <param name="id">Its id in the table of limits.</param>
/// <param name="member">Name of the member that holds it.</param>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true, Inherited = false)]
public sealed class LimitAttribute(string id, string? member = null) : Attribute
{
    /// <summary>Its id in the table of limits.</summary>
    public string Id { get; } = id;

    /// <summary>Name of the member that holds it, if any.</summary>
    public string? Member { get; } = member;
}

/// <summary>Declares that a rule reads limits whose ids a member of a class lists.</summary>
/// <param name="type">The class.</param>
/// <param name="member">Name of its static member: the ids, as texts.</param>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true, Inherited = false)]
public sealed class LimitsOfAttribute(Type type, string member) : Attribute
{
    /// <summary>The class.</summary>
    public Type Type { get; } = type;

    /// <summary>Name of its static member.</summary>
    public string Member { get; } = member;
}
