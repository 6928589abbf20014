using System.Text.Json;
using Pipeline.Reports;

namespace Pipeline.Tests.Units.Reports;

public sealed class PlanJsonTests
{
    [Fact]
    public void Two_weeks() =>
        Golden.Of("tests/Units/Reports/golden/two-weeks.json").ShouldBe(PlanJson.Render(TwoWeeks.Plan));

    [Fact]
    public void Plans_keep_to_the_published_schema()
    {
        Schemas.Plan.Complaints(PlanJson.Render(TwoWeeks.Plan)).Should().BeEmpty();
        Schemas.Plan.Complaints(PlanJson.Render(TwoPainters.Plan)).Should().BeEmpty();
        Schemas.Plan.Complaints(PlanJson.Render(Harbour.Empty)).Should().BeEmpty();
    }

    [Fact]
    public void The_schema_refuses_what_is_not_a_plan()
    {
        var json = PlanJson.Render(TwoPainters.Plan);
        Schemas.Plan.Complaints(json.Replace("\"version\": 1", "\"version\": 2", StringComparison.Ordinal)).Should().NotBeEmpty();
        Schemas.Plan.Complaints(json.Replace("\"attendedMinutes\"", "\"minutes\"", StringComparison.Ordinal)).Should().NotBeEmpty();
        Schemas.Plan.Complaints(json.Replace("\"sort\": \"step\"", "\"sort\": \"stroll\"", StringComparison.Ordinal)).Should().NotBeEmpty();
        Schemas.Plan.Complaints("{}").Should().NotBeEmpty();
    }

    [Fact]
    public void Every_property_of_the_document_is_described()
    {
        using var plan = JsonDocument.Parse(PlanJson.Render(TwoWeeks.Plan));
        var task = plan.RootElement.GetProperty("days")[2].GetProperty("sittings")[0].GetProperty("tasks")[1];
        task.EnumerateObject().Select(p => p.Name).Should().Contain(["id", "sort", "from", "to", "words", "verb", "model", "paint", "starts", "whyNotEarlier"]);
        task.GetProperty("from").GetString().Should().Be("2026-12-04T19:24:00Z");
        task.GetProperty("paint").GetProperty("fromMix").GetInt32().Should().Be(0);
    }

    [Theory]
    [MemberData(nameof(Hostile.Names), MemberType = typeof(Hostile))]
    public void A_name_comes_back_as_it_went_in(string name)
    {
        var json = PlanJson.Render(Hostile.PlanOf(name));
        Hostile.Steers(json).Should().BeFalse();
        Schemas.Plan.Complaints(json).Should().BeEmpty();
        using var plan = JsonDocument.Parse(json);
        var expected = name.Replace('\ud800', '\ufffd');
        plan.RootElement.GetProperty("batch").GetString().Should().Be(expected);
        plan.RootElement.GetProperty("finishes")[0].GetProperty("model").GetString().Should().Be(expected);
    }
}
