using NodaTime;
using Pipeline.Planning;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>Why a plan is not shorter: the chain from its first cause, what binds, how much could be saved, every model's slack, and the ways out.</summary>
public static class LateText
{
    /// <summary>The reasons as text.</summary>
    public static string Render(LateReasons late, Plan plan, TextStyle style) => Set(late, plan, style).ToString();

    /// <summary>Puts the reasons on a console, as it suits it.</summary>
    public static void Write(LateReasons late, Plan plan, IAnsiConsole console) => Set(late, plan, TextStyle.For(console)).WriteTo(console);

    private static Page Set(LateReasons late, Plan plan, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(late);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(style);
        var page = new Page(style);
        page.Ends(Visible.Line(plan.Batch), Tone.Heading, new Run(PlanFacts.Dates(plan)));
        page.Rule('=');
        var (ready, tone) = PlanFacts.Ready(plan);
        page.Hung("", ready, tone);
        if (PlanFacts.Done(plan) is { } done)
            page.Hung("", done);
        SetChain(page, late);
        SetBinding(page, late);
        ClosingText.Head(page, "How much could be saved");
        foreach (var sentence in PlanFacts.Goodness(plan))
            page.Hung("", sentence);
        SetSlack(page, late);
        ClosingText.SetWaysOut(page, plan);
        return page;
    }

    private static void SetChain(Page page, LateReasons late)
    {
        ClosingText.Head(page, "The chain", Visible.Line($"from the start to {late.Target.Model}, ready {Moments.Full(late.Target.Ready)}"));
        for (var i = 0; i < late.Chain.Count; i++)
            page.Hung(FormattableString.Invariant($"{i + 1,3}  "), Visible.Line(late.Chain[i]));
    }

    private static void SetBinding(Page page, LateReasons late)
    {
        ClosingText.Head(page, "What binds");
        page.Hung("", $"Of the {Said(late.Span)} of this chain hands are at work for {Said(late.Hands)}; for {Said(late.Drying)} more something dries or runs by itself, "
            + $"and for the other {Said(late.Away)} it is only that nobody sits at the bench, or that the sitting has no room.");
        if (!late.Waits.IsEmpty)
            page.Hung("Waits      ", Visible.Line(string.Join("; ", late.Waits.Select(wait => $"{wait.For} {Said(wait.Together)}{(wait.Times > 1 ? FormattableString.Invariant($" in {wait.Times} waits") : "")}"))));
        if (!late.Sittings.IsEmpty)
            page.Hung("Sittings   ", $"filled to the end: {string.Join(", ", late.Sittings.Select(Moments.Full))}");
    }

    private static void SetSlack(Page page, LateReasons late)
    {
        ClosingText.Head(page, "Slack", "by how much a model could be ready later, with nothing late and the end as it is");
        Columns.Set(page, 0, [new("model"), new("ready"), new("due"), new("slack")],
            [.. late.Models.Select(model => (IReadOnlyList<Run>)
            [
                Amounts.Model(model.Finish.Model, model.Finish.Units),
                Moments.Full(model.Finish.Ready),
                model.Finish.Due is { } due ? Moments.Full(due) : "",
                PlanFacts.Margin(model.Finish) is (var words, Tone.Error) ? new Run(words, Tone.Error) : model.Slack.TotalMinutes < 1 ? "none" : Moments.Length((long)model.Slack.TotalMinutes),
            ])]);
    }

    private static string Said(Duration length) => Moments.Length((long)Math.Round(length.TotalMinutes, MidpointRounding.AwayFromZero));
}
