using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Two plans compared, as Markdown; the same content and order as <see cref="ComparisonText"/>.</summary>
public static class ComparisonMarkdown
{
    /// <summary>The comparison as a Markdown document.</summary>
    public static string Render(PlanComparison both)
    {
        ArgumentNullException.ThrowIfNull(both);
        var page = new MarkdownText();
        page.Heading(1, $"{MarkdownText.Escaped(both.Batch)}: two plans compared");
        page.Block(ComparisonFacts.Ready(both).Words);
        page.Block(ComparisonFacts.Counts(both));
        if (ComparisonFacts.Done(both) is { } done)
            page.Block(MarkdownText.Escaped(done));
        if (both.IsSame)
            return page.ToString();
        SetMoves(page, both, "To another sitting", both.Moves.Where(move => move.IsToAnotherSitting));
        SetMoves(page, both, "Otherwise in the same sitting", both.Moves.Where(move => !move.IsToAnotherSitting && !move.IsSlide));
        SetMoves(page, both, "A few minutes sooner or later", both.Moves.Where(move => move.IsSlide));
        SetTasks(page, both, "New", both.Added);
        SetTasks(page, both, "Gone", both.Gone);
        page.Heading(2, "What it costs or saves");
        page.Table([new(""), new("before", true), new("after", true), new("")],
            [.. ComparisonFacts.Costs(both).Select(cost => (IReadOnlyList<string>)[cost.What, cost.Before, cost.After, cost.Difference])]);
        page.Heading(2, "Finished");
        page.Table([new("model"), new("before"), new("after"), new("")],
            [.. both.Finishes.Select(finish =>
            {
                var (before, after, difference, tone) = ComparisonFacts.Finish(both, finish);
                return (IReadOnlyList<string>)[MarkdownText.Escaped(finish.Model), before, after, tone == Tone.Error ? $"**{difference}**" : difference];
            })]);
        return page.ToString();
    }

    private static void SetMoves(MarkdownText page, PlanComparison both, string head, IEnumerable<TaskMove> some)
    {
        var moves = some.ToList();
        if (moves.Count == 0)
            return;
        page.Heading(2, head);
        page.Table([new("now"), new("was"), new("what")],
            [.. moves.Select(move =>
            {
                var otherwise = ComparisonFacts.Otherwise(move);
                var what = $"{ComparisonFacts.Who(move.After)}: {move.After.Words}{(otherwise.Length > 0 ? $" ({otherwise})" : "")}";
                return (IReadOnlyList<string>)[ComparisonFacts.Moment(both, move.After.Start), ComparisonFacts.Moment(both, move.Before.Start), MarkdownText.Escaped(what)];
            })]);
    }

    private static void SetTasks(MarkdownText page, PlanComparison both, string head, IReadOnlyList<WrittenTask> tasks)
    {
        if (tasks.Count == 0)
            return;
        page.Heading(2, head);
        page.Table([new("when"), new("what")],
            [.. tasks.Select(task => (IReadOnlyList<string>)[ComparisonFacts.Moment(both, task.Start), MarkdownText.Escaped($"{ComparisonFacts.Who(task)}: {task.Words}")])]);
    }
}
