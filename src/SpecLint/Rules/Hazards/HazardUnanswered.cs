using SpecLint.Book;
using SpecLint.Findings;
using SpecLint.Profile;

namespace SpecLint.Rules.Hazards;

[Rule("SL6023", "hazard-unanswered", "A part is harmful unless a condition is met, and nothing says that it is", Level.Warning, Safety = true)]
internal sealed partial class HazardUnanswered : RecipeRule
{
    public override void Check(RecipeContext context)
    {
        foreach (var load in context.Profile.HazardLoads)
        {
            if (!load.Direct || load.Hazard.Asks is not { } ask || IsAnswered(context, load, ask.Answers)) continue;
            string source = load.Hazard.Rules.Count > 0 ? load.Hazard.Rules[0].Source : "from memory";
            string harm = load.Hazard.Harm.Length == 0 ? "" : $" ({load.Hazard.Harm})";
            context.Report(new(Rule)
            {
                Answer = Answer.NotShown,
                AskedLevel = ask.Level,
                At = context.ItemOf(load.Part.Line),
                Key = load.Hazard.Id,
                Message = $"`{load.Id}` is a hazard{harm}, and nothing says {ask.What} ({source}).",
                Advice = $"Write in the line's note, or once in the notes of the ingredient's file, {ask.What}. Otherwise take it out.",
                Caution = HazardWords.Caution,
                Evidence = [HazardWords.Of(context, load)],
            });
        }
    }

    /// <summary>Whether the note of the line, the notes of the ingredient's file or its name say it, and do not deny it.</summary>
    private static bool IsAnswered(RecipeContext context, HazardLoad load, FixedList<string> answers)
    {
        if (load.Part.Line.Note.IsGiven && Phrases.Affirms(load.Part.Line.Note.Value, answers)) return true;
        if (load.Part.Item is { IsBuiltIn: false, File: Ingredient own })
        {
            if (own.Name.IsGiven && Phrases.Affirms(own.Name.Value, answers)) return true;
            foreach (var note in own.Notes)
            {
                if (note.IsGiven && Phrases.Affirms(note.Value, answers)) return true;
            }
        }

        // Heat in the pot, after it went in, cooks it.
        return answers.Contains("boiled") && Pot.Of(context.Recipe).Any(load.Part.Line, static s => s.Verb.Boils);
    }
}
