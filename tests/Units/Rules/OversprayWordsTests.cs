namespace Pipeline.Tests.Units.Rules;

/// <summary>What <c>overspray-on-finished</c> calls the coat it speaks of.</summary>
public sealed class OversprayWordsTests
{
    [Theory]
    [InlineData("", "Lens has its last coat already,")]
    [InlineData("- varnish: hull\n    with: clear w satin\n    by: brush", "Lens has its last coat already,")]
    [InlineData("- varnish: all\n    with: clear w satin\n    by: brush", "Lens has its last coat of colour already,")]
    [InlineData("- dry-brush: lens\n    with: chalk white", "Lens has its last coat of colour already,")]
    public void A_coat_that_something_still_follows_is_the_last_of_colour(string after, string said) =>
        Check.Model($$"""
            material: styrene
            areas: { hull: 20 cm², lens: 2 cm² }
            route:
              - undercoat: all
                with: slate undercoat
                by: airbrush
              - coat: lens
                with: harbour black
                by: brush
              - coat: hull
                with: derrick yellow
                by: airbrush
              {{after}}
            """).Where(finding => finding.Rule == "overspray-on-finished").Should().ContainSingle()
            .Which.Message.Should().StartWith(said);
}
