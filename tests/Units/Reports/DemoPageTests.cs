using Pipeline.Planning;
using Pipeline.Reports;
using Pipeline.Tests.Units.Planning;
using Pipeline.Workflows;
using Spectre.Console;
using TextStyle = Pipeline.Reports.TextStyle;

namespace Pipeline.Tests.Units.Reports;

/// <summary>The pages of real plans: the demo files at both paces.</summary>
public sealed class DemoPageTests
{
    public static TheoryData<string, Pace> Demos => new()
    {
        { "workflows/first.yaml", Pace.Comfortable },
        { "workflows/tidewater.yaml", Pace.Brisk },
    };

    [Theory]
    [MemberData(nameof(Demos))]
    public void A_real_plan_keeps_to_the_page_and_the_schema(string file, Pace pace)
    {
        var plan = DemoTests.Plan([file], pace);
        var text = PlanText.Render(plan, TextStyle.Plain);
        text.Split('\n').Should().OnlyContain(line => line.GetCellWidth() <= 80);
        Count(text, "[ ] ").Should().Be(Tasks(plan));
        Count(PlanMarkdown.Render(plan), "- [ ] ").Should().Be(Tasks(plan));
        Schemas.Plan.Complaints(PlanJson.Render(plan)).Should().BeEmpty();
    }

    private static int Tasks(Plan plan) => plan.Days.SelectMany(day => day.Sittings).Sum(sitting => sitting.Tasks.Count);

    private static int Count(string text, string lineStart) => text.Split('\n').Count(line => line.StartsWith(lineStart, StringComparison.Ordinal));
}
