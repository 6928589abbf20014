using Pipeline.Planning;
using Spectre.Console;

namespace Pipeline.Reports;

/// <summary>Two plans of one batch compared: what moved, and what it costs or saves.</summary>
public static class ComparisonText
{
    /// <summary>The comparison as text.</summary>
    public static string Render(PlanComparison both, TextStyle style) => Set(both, style).ToString();

    /// <summary>Puts the comparison on a console, as it suits it.</summary>
    public static void Write(PlanComparison both, IAnsiConsole console) => Set(both, TextStyle.For(console)).WriteTo(console);

    private static Page Set(PlanComparison both, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(both);
        ArgumentNullException.ThrowIfNull(style);
        var page = new Page(style);
        page.Ends(Visible.Line(both.Batch), Tone.Heading, new Run("two plans compared"));
        page.Rule('=');
        var (ready, tone) = ComparisonFacts.Ready(both);
        page.Hung("", ready, tone);
        page.Hung("", ComparisonFacts.Counts(both));
        if (ComparisonFacts.Done(both) is { } done)
            page.Hung("", done);
        if (both.IsSame)
            return page;
        SetMoves(page, both, "To another sitting", both.Moves.Where(move => move.IsToAnotherSitting));
        SetMoves(page, both, "Otherwise in the same sitting", both.Moves.Where(move => !move.IsToAnotherSitting && !move.IsSlide));
        SetSlides(page, both);
        SetTasks(page, both, "New", both.Added);
        SetTasks(page, both, "Gone", both.Gone);
        ClosingText.Head(page, "What it costs or saves");
        Columns.Set(page, 0, [new(""), new("before", true), new("after", true), new("")],
            [.. ComparisonFacts.Costs(both).Select(cost => (IReadOnlyList<Run>)[cost.What, cost.Before, cost.After, cost.Difference])]);
        ClosingText.Head(page, "Finished");
        Columns.Set(page, 0, [new("model"), new("before"), new("after"), new("")],
            [.. both.Finishes.Select(finish =>
            {
                var (before, after, difference, tone) = ComparisonFacts.Finish(both, finish);
                return (IReadOnlyList<Run>)[Visible.Line(finish.Model), before, after, new Run(difference, tone)];
            })]);
        return page;
    }

    private static void SetMoves(Page page, PlanComparison both, string head, IEnumerable<TaskMove> some)
    {
        var moves = some.ToList();
        if (moves.Count == 0)
            return;
        ClosingText.Head(page, head);
        foreach (var move in moves)
        {
            var otherwise = ComparisonFacts.Otherwise(move);
            page.Hung($"{ComparisonFacts.Moment(both, move.After.Start),-16}  ", Visible.Line($"{ComparisonFacts.Who(move.After)}: {move.After.Words}"));
            page.Hung(new Run($"  was {ComparisonFacts.Was(both, move)}", Tone.Quiet), Visible.Line(otherwise.Length > 0 ? $"; {otherwise}" : ""), Tone.Quiet);
        }
    }

    private static void SetSlides(Page page, PlanComparison both)
    {
        var slides = both.Moves.Where(move => move.IsSlide).ToList();
        if (slides.Count == 0)
            return;
        ClosingText.Head(page, "A few minutes sooner or later");
        foreach (var slide in slides)
        {
            var when = $"{ComparisonFacts.Moment(both, slide.After.Start)}, was {ComparisonFacts.Was(both, slide)}";
            page.Hung($"{when,-27}  ", Visible.Line($"{ComparisonFacts.Who(slide.After)}: {slide.After.Words}"));
        }
    }

    private static void SetTasks(Page page, PlanComparison both, string head, IReadOnlyList<WrittenTask> tasks)
    {
        if (tasks.Count == 0)
            return;
        ClosingText.Head(page, head);
        foreach (var task in tasks)
            page.Hung($"{ComparisonFacts.Moment(both, task.Start),-16}  ", Visible.Line($"{ComparisonFacts.Who(task)}: {task.Words}"));
    }
}
