using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Mends;

/// <summary>How a mend is written into a file: as the file is set, and not at all where that cannot be done faithfully.</summary>
public sealed class EditTests
{
    private static readonly NewStep Sand = new("sand", new Acting.TheAreas());

    private static readonly NewStep Gloss = new("varnish", new Acting.TheAreas(), [new("with", "clear w gloss"), new("by", "brush")]);

    [Fact]
    public void A_new_step_is_set_as_the_step_beside_it() => Mended(
        """
        route:
          -   fill: hull     # the seam
              with: putty
          -   coat: hull
              with: grey
        """,
        at => new Mend.PutBefore(at("coat"), Gloss),
        areas: ["hull", "deck plate"]).Should().Be(
        """
        route:
          -   fill: hull     # the seam
              with: putty
          -   varnish: [hull, deck plate]
              with: clear w gloss
              by: brush
          -   coat: hull
              with: grey
        """);

    [Fact]
    public void A_new_step_beside_one_in_braces_is_in_braces() => Mended(
        """
        route:
          - { fill: hull, with: putty }
          - { coat: hull,
              with: grey }
        """,
        at => new Mend.PutAfter(at("coat"), Gloss)).Should().Be(
        """
        route:
          - { fill: hull, with: putty }
          - { coat: hull,
              with: grey }
          - { varnish: hull, with: clear w gloss, by: brush }
        """);

    [Fact]
    public void The_remark_above_a_step_stays_with_it() => Mended(
        """
        route:
          # first the seam
          - fill: hull
            # two thin layers

          # then colour
          # in one go
          - coat: hull
            with: grey
            # not the keel

          # at the end
          - photograph: hull
        """,
        at => new Mend.MoveBefore(at("coat"), at("fill"))).Should().Be(
        """
        route:
          # then colour
          # in one go
          - coat: hull
            with: grey
            # not the keel
          # first the seam
          - fill: hull
            # two thin layers


          # at the end
          - photograph: hull
        """);

    [Fact]
    public void A_step_moves_to_the_end_of_a_file_without_a_last_line_end() => Mended(
        "route:\n- fill: hull\n- coat: hull",
        at => new Mend.MoveAfter(at("fill"), at("coat"))).Should().Be("route:\n- coat: hull\n- fill: hull");

    [Fact]
    public void The_last_step_moves_up_from_the_end_of_a_file_without_a_last_line_end() => Mended(
        "route:\n- fill: hull\n- coat: hull",
        at => new Mend.MoveBefore(at("coat"), at("fill"))).Should().Be("route:\n- coat: hull\n- fill: hull");

    [Fact]
    public void Lines_end_as_the_others_do() => Mended(
        "route:\r\n- fill: hull\r\n- coat: hull\r\n",
        at => new Mend.PutAfter(at("coat"), Sand)).Should().Be("route:\r\n- fill: hull\r\n- coat: hull\r\n- sand: hull\r\n");

    [Fact]
    public void A_byte_order_mark_stays() => Mended(
        "\uFEFFroute:\n- coat: hull\n",
        at => new Mend.PutBefore(at("coat"), Sand)).Should().Be("\uFEFFroute:\n- sand: hull\n- coat: hull\n");

    [Fact]
    public void A_key_that_is_there_gets_the_value() => Mended(
        "route:\n- coat: hull\n  clean-out: 'none'   # no time\n  with: grey\n",
        at => new Mend.SetKey(at("coat"), "clean-out", "flush")).Should().Be("route:\n- coat: hull\n  clean-out: flush   # no time\n  with: grey\n");

    [Fact]
    public void A_key_that_is_not_there_comes_last() => Mended(
        "route:\n- with: grey\n  coat: hull\n\n- fill: hull\n",
        at => new Mend.SetKey(at("coat"), "body", "mist")).Should().Be("route:\n- with: grey\n  coat: hull\n  body: mist\n\n- fill: hull\n");

    [Fact]
    public void A_key_goes_into_the_braces() => Mended(
        "route:\n- { coat: hull, with: '}' } # so\n",
        at => new Mend.SetKey(at("coat"), "body", "mist")).Should().Be("route:\n- { coat: hull, with: '}', body: mist } # so\n");

    [Fact]
    public void A_step_goes_with_its_lines_and_leaves_the_remark_above_it() => Mended(
        "route:\n- coat: hull\n# so it was\n- fill: hull\n  with: putty\n\n- sand: hull\n",
        at => new Mend.TakeOut(at("fill"))).Should().Be("route:\n- coat: hull\n# so it was\n\n- sand: hull\n");

    [Fact]
    public void A_step_with_a_remark_in_it_is_not_thrown_away() => Refused(
        "route:\n- coat: hull\n- fill: hull # the seam\n",
        at => new Mend.TakeOut(at("fill")));

    [Fact]
    public void The_only_step_is_not_thrown_away() => Refused("route:\n- coat: hull\n", at => new Mend.TakeOut(at("coat")));

    [Fact]
    public void In_a_scheme_the_new_step_names_what_the_step_there_names() => Mended(
        "schemes:\n  band:\n    areas: [metal, glass]\n    route:\n    - coat: [metal, glass]\n",
        at => new Mend.PutBefore(at("coat"), Sand),
        areas: ["suit", "helmet", "lens"]).Should().Be(
        "schemes:\n  band:\n    areas: [metal, glass]\n    route:\n    - sand: [metal, glass]\n    - coat: [metal, glass]\n");

    [Fact]
    public void A_mask_goes_by_its_name_or_by_what_it_lies_on()
    {
        Mended("route:\n- mask: lens\n  as: discs 2\n- coat: hull\n", at => new Mend.PutAfter(at("coat"), new NewStep("unmask", new Acting.MaskOf(at("mask")))))
            .Should().EndWith("- unmask: discs 2\n");
        Mended("route:\n- mask: [lens, rim]\n- coat: hull\n", at => new Mend.PutAfter(at("coat"), new NewStep("unmask", new Acting.MaskOf(at("mask")))))
            .Should().EndWith("- unmask: [lens, rim]\n");
    }

    [Theory]
    [InlineData("plain name", "plain name")]
    [InlineData("no. 5: gloss", "\"no. 5: gloss\"")]
    [InlineData("say \"ah\"", "\"say \\\"ah\\\"\"")]
    [InlineData("# 3", "\"# 3\"")]
    public void A_name_is_quoted_where_it_must_be(string name, string written) => Mended(
        "route:\n- coat: hul\n",
        at => new Mend.Rename(at("coat") with { Column = 9 }, name)).Should().Be($"route:\n- coat: {written}\n");

    [Theory]
    [InlineData("route: [{ fill: hull }, { coat: hull }]\n")]
    [InlineData("a: &r\n- coat: hull\n- fill: hull\nroute: *r\n")]
    [InlineData("route:\n- - coat: hull\n")]
    [InlineData("route:\n-\n  coat: hull\n- fill: hull\n")]
    [InlineData("route:\r- coat: hull\r- fill: hull\r")]
    public void Where_the_text_cannot_be_changed_faithfully_there_is_no_edit(string yaml) => Refused(yaml, at => new Mend.PutBefore(at("coat"), Sand));

    [Fact]
    public void A_step_does_not_move_into_another_route() => Refused(
        "one:\n- coat: hull\n- fill: hull\ntwo:\n- mask: hull\n- sand: hull\n",
        at => new Mend.MoveAfter(at("coat"), at("mask")));

    [Fact]
    public void A_silenced_finding_has_no_edit() => new Mending(new SourceText("case.yaml", "route:\n- coat: hull\n")).EditsOf(
        Finding(new Mend.PutBefore(new Place("case.yaml", 2, 3), Sand), ["hull"]) with { Silenced = "meant so" }).IsEmpty.Should().BeTrue();

    private static void Refused(string yaml, Func<Func<string, Place>, Mend> mend) => Edits(yaml, mend, ["hull"]).IsEmpty.Should().BeTrue();

    private static string Mended(string yaml, Func<Func<string, Place>, Mend> mend, Sequence<string>? areas = null)
    {
        var edits = Edits(yaml, mend, areas ?? ["hull"]);
        edits.IsEmpty.Should().BeFalse("there is a faithful way");
        return Editing.Apply(new SourceText("case.yaml", yaml), edits).Text;
    }

    private static Sequence<Edit> Edits(string yaml, Func<Func<string, Place>, Mend> mend, Sequence<string> areas) =>
        new Mending(new SourceText("case.yaml", yaml)).EditsOf(Finding(mend(verb => PlaceOf(yaml, verb)), areas));

    private static Finding Finding(Mend mend, Sequence<string> areas) => new()
    {
        Rule = "some-rule",
        Level = Level.Error,
        Place = mend switch { Mend.PutBefore put => put.Step, Mend.PutAfter put => put.Step, _ => new Place("case.yaml", 1, 1) },
        Message = "Wrong.",
        Areas = areas,
        Mend = mend,
    };

    /// <summary>Where a verb stands.</summary>
    private static Place PlaceOf(string yaml, string verb)
    {
        var lines = yaml.TrimStart('\uFEFF').Split('\n');
        var line = Array.FindIndex(lines, each => each.Contains(verb, StringComparison.Ordinal));
        return new Place("case.yaml", line + 1, lines[line].IndexOf(verb, StringComparison.Ordinal) + 1);
    }
}
