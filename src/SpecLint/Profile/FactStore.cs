namespace SpecLint.Profile;

/// <summary>The facts that have been worked out so far.</summary>
internal sealed class FactStore
{
    private readonly FactValue[] facts = new FactValue[FactNames.Count];

    /// <summary>A fact; the default value where it has not been worked out.</summary>
    public FactValue this[Fact fact]
    {
        get => facts[(int)fact];
        set => facts[(int)fact] = value;
    }

    /// <summary>Leaves a fact open.</summary>
    public void Leave(Fact fact, string because) => facts[(int)fact] = FactValue.Open(because);

    /// <summary>Leaves a fact open where something that it needs is not known.</summary>
    public bool LeaveIf(Fact fact, Unknowns needs, Lack lack)
    {
        if (!lack.Has(needs | Unknowns.Composition | Unknowns.Mass)) return false;
        Leave(fact, lack.Because);
        return true;
    }

    /// <summary>Sets a computed fact, or leaves it open where something that it needs is not known.</summary>
    public void PutOrLeave(Fact fact, Estimate estimate, Unknowns needs, Lack lack)
    {
        if (!LeaveIf(fact, needs, lack)) facts[(int)fact] = estimate.ToFact();
    }
}
