using SpecLint.Science;

namespace SpecLint.Profile;

/// <summary>
/// Arrays for the profile of one drink that one check looks at and then lets go of: the next one on the same thread takes them over,
/// which saves a sixth of what a run takes of memory. Nothing of such a profile may be held after it.
/// </summary>
internal sealed class ProfileRoom
{
    /// <summary>A drink is two mixes: before the ice, and as served.</summary>
    private const int Mixes = 2;

    /// <summary>Those that nothing uses: while a drink is checked, its corrections are tried in a second one.</summary>
    [ThreadStatic]
    private static ProfileRoom? free;

    private ProfileRoom? nextFree;

    private readonly double[][] grams = new double[Mixes][];
    private readonly Variation[][] inputs = new Variation[Mixes][];
    private int gramsTaken;
    private int inputsTaken;

    /// <summary>The facts, empty.</summary>
    public FactStore Facts { get; } = new();

    /// <summary>A room that nothing else uses.</summary>
    public static ProfileRoom Take()
    {
        var room = free ?? new ProfileRoom();
        free = room.nextFree;
        room.nextFree = null;
        return room;
    }

    /// <summary>Leaves it to the next profile on this thread.</summary>
    public void GiveBack()
    {
        Facts.Clear();
        gramsTaken = inputsTaken = 0;
        nextFree = free;
        free = this;
    }

    /// <summary>Masses, all zero.</summary>
    public double[] Grams()
    {
        if (gramsTaken == Mixes) return new double[Components.Count];
        ref double[]? mine = ref grams[gramsTaken++]!;
        if (mine is null) mine = new double[Components.Count];
        else mine.AsSpan().Clear();
        return mine;
    }

    /// <summary>Inputs, at least so many, of whatever was in them.</summary>
    public Variation[] Inputs(int capacity)
    {
        if (inputsTaken == Mixes) return new Variation[capacity];
        ref Variation[]? mine = ref inputs[inputsTaken++]!;
        if (mine is null || mine.Length < capacity) mine = new Variation[Math.Max(64, capacity)];
        return mine;
    }
}
