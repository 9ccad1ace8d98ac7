namespace SpecLint.Profile;

/// <summary>Fourth room: the facts, each group worked out when one of it is first asked for.</summary>
internal sealed class FactSheet(FactBasis basis, RecipeProfile profile, FactStore facts)
{
    private readonly FactStore facts = facts;
    private int groupsDone;

    private enum Group
    {
        Composition,
        Ph,
        WaterActivity,
        Freezing,
        Life,
        MixVolume,
        BeforeDilution,
    }

    /// <summary>A fact.</summary>
    public FactValue Get(Fact fact)
    {
        var group = GroupOf(fact);
        int bit = 1 << (int)group;
        if ((Volatile.Read(ref groupsDone) & bit) == 0)
        {
            // A group may ask for another, which the same thread may enter.
            lock (facts)
            {
                if ((groupsDone & bit) == 0)
                {
                    Work(group);
                    Volatile.Write(ref groupsDone, groupsDone | bit);
                }
            }
        }

        return facts[fact];
    }

    private static Group GroupOf(Fact fact) => fact switch
    {
        Fact.Ph or Fact.MixPh => Group.Ph,
        Fact.WaterActivity => Group.WaterActivity,
        Fact.FreezingPoint => Group.Freezing,
        Fact.Life => Group.Life,
        Fact.MixVolume => Group.MixVolume,
        Fact.MixAbv or Fact.MixSugar or Fact.MixAcid => Group.BeforeDilution,
        _ => Group.Composition,
    };

    private void Work(Group group)
    {
        switch (group)
        {
            case Group.Composition: CompositionFacts.Work(basis, facts); break;
            case Group.MixVolume: CompositionFacts.WorkMixVolume(basis, facts); break;
            case Group.BeforeDilution: CompositionFacts.WorkBeforeDilution(basis, facts); break;
            case Group.Ph: PhFacts.Work(basis, facts, Get(Fact.Density)); break;
            case Group.WaterActivity: WaterFacts.WorkActivity(basis, facts, Get(Fact.Density)); break;
            case Group.Freezing: WaterFacts.WorkFreezing(basis, facts, Get(Fact.Density)); break;
            case Group.Life: facts[Fact.Life] = basis.IsDrink ? FactValue.Open("a drink is served when it is made") : KeepingLife.Of(profile); break;
        }
    }
}
