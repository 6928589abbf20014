using System.Text;
using System.Text.Json;

namespace Pipeline.Tests.EndToEnd;

/// <summary>Mending and explaining through the real command.</summary>
public sealed class MendTests : IDisposable
{
    private static readonly string Unwashed = Files.Buoy.Replace("          - clean: all\n", "", StringComparison.Ordinal);

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void What_can_be_mended_is_shown_as_a_diff_and_nothing_is_written()
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Pipeline("check", "buoy.yaml", "--mend").ShowsNoTrace();

        ran.ExitCode.Should().Be(0, "nothing of it remains");
        ran.Out.Should().StartWith("--- buoy.yaml\n+++ buoy.yaml\n@@ -").And.Contain("\n-            with: slate undercoats\n+            with: slate undercoat\n");
        ran.Err.Should().Be("pipeline: 1 mend shown, nothing written; nothing remains\n");
        File.ReadAllText(Path.Combine(bench.Folder, "buoy.yaml")).Should().Be(Files.Wrong);
    }

    [Fact]
    public void The_diff_is_one_that_patch_follows()
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Shell("\"$pipeline\" check buoy.yaml --mend 2>/dev/null > mend.diff; patch -s -p0 < mend.diff && \"$pipeline\" check buoy.yaml");

        ran.Should().Be(new Ran(0, "", ""));
        File.ReadAllText(Path.Combine(bench.Folder, "buoy.yaml")).Should().Be(Files.Buoy);
    }

    [Fact]
    public void Writing_keeps_line_ends_and_byte_order_mark_and_checks_again()
    {
        var text = Unwashed.Replace("\n", "\r\n", StringComparison.Ordinal);
        bench.File("buoy.yaml", [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)]);

        var ran = bench.Pipeline("check", "buoy.yaml", "--mend", "--write").ShowsNoTrace();

        ran.ExitCode.Should().Be(0, ran.Err);
        ran.Err.Should().Be("pipeline: 1 mend written; nothing remains\n");
        var bytes = File.ReadAllBytes(Path.Combine(bench.Folder, "buoy.yaml"));
        bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble).Should().BeTrue();
        Encoding.UTF8.GetString(bytes.AsSpan(3)).Should().Be(Files.Buoy.Replace("\n", "\r\n", StringComparison.Ordinal));
        bench.Pipeline("check", "buoy.yaml").Should().Be(new Ran(0, "", ""));
    }

    [Fact]
    public void Who_may_read_the_file_and_a_link_to_it_stay_as_they_are()
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Shell("chmod 600 buoy.yaml; ln -s buoy.yaml link.yaml; \"$pipeline\" check link.yaml --mend --write >/dev/null; stat -c '%F %a' link.yaml buoy.yaml");

        ran.Should().Be(new Ran(0, "symbolic link 777\nregular file 600\n", "pipeline: 1 mend written; nothing remains\n"));
        File.ReadAllText(Path.Combine(bench.Folder, "buoy.yaml")).Should().Be(Files.Buoy);
    }

    [Fact]
    public void Where_nothing_can_be_mended_surely_it_says_so()
    {
        bench.File("buoy.yaml", Files.Buoy.Replace("material: resin", "material: cheese", StringComparison.Ordinal));

        var ran = bench.Pipeline("check", "buoy.yaml", "--mend").ShowsNoTrace();

        ran.ExitCode.Should().Be(1);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().StartWith("pipeline: nothing of this can be mended surely; it is yours to decide\n").And.Contain("cheese");
    }

    [Fact]
    public void What_remains_decides_the_exit_code()
    {
        bench.File("buoy.yaml", Files.Wrong.Replace("material: resin", "material: cheese", StringComparison.Ordinal));

        var ran = bench.Pipeline("check", "buoy.yaml", "--mend").ShowsNoTrace();

        ran.ExitCode.Should().Be(1);
        ran.Out.Should().Contain("+            with: slate undercoat\n");
        ran.Err.Should().Contain("what remains, by the lines of the mended file:").And.Contain("cheese");
    }

    [Fact]
    public void Standard_input_is_not_written_back()
    {
        var ran = bench.PipelineReading(Files.Wrong, "check", "-", "--mend", "--write").ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Err.Should().Contain("standard input cannot be written back");
    }

    [Theory]
    [InlineData("--write", "--write goes with --mend")]
    [InlineData("--mend --as json", "--mend prints a diff")]
    public void Words_that_do_not_go_together_are_refused(string words, string why)
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Pipeline(["check", "buoy.yaml", .. words.Split(' ')]).ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Err.Should().Contain(why);
    }

    [Fact]
    public void Json_and_sarif_carry_the_edits()
    {
        using var json = JsonDocument.Parse(bench.PipelineReading(Files.Wrong, "check", "--as", "json", "-", "--name", "buoy.yaml").Out);
        var edit = json.RootElement.GetProperty("findings")[0].GetProperty("edits")[0];
        edit.GetProperty("text").GetString().Should().Be("slate undercoat");
        edit.GetProperty("from").GetProperty("line").GetInt32().Should().Be(19);

        using var sarif = JsonDocument.Parse(bench.PipelineReading(Unwashed, "check", "--as", "sarif", "-", "--name", "buoy.yaml").Out);
        var run = sarif.RootElement.GetProperty("runs")[0];
        run.GetProperty("tool").GetProperty("driver").GetProperty("rules")[0].GetProperty("help").GetProperty("markdown").GetString().Should().StartWith("# paint-on-unwashed");
        run.GetProperty("results")[0].GetProperty("fixes")[0].GetProperty("artifactChanges")[0].GetProperty("replacements")[0]
            .GetProperty("insertedContent").GetProperty("text").GetString().Should().Be("          - clean: all\n");
    }

    [Fact]
    public void A_step_is_explained_from_its_line()
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline("why", "buoy.yaml:19").ShowsNoTrace();

        ran.ExitCode.Should().Be(0, ran.Err);
        ran.Out.Should().StartWith("buoy.yaml:18:13: undercoat body\n").And.Contain("slate undercoat").And.Contain("[damp-piece]");
        ran.Out.Split('\n').Should().OnlyContain(line => line.Length <= 80);
        bench.Pipeline("why", "buoy.yaml:18:13").Out.Should().Be(ran.Out, "a place as findings give it will do");
    }

    [Theory]
    [InlineData("buoy.yaml:3", "no step stands on line 3 of buoy.yaml")]
    [InlineData("buoy.yaml:9999", "the nearest begins on line")]
    [InlineData("buoy.yaml", "names no line")]
    [InlineData("buoy.yaml:0", "names no line")]
    [InlineData("gone.yaml:3", "there is no such file")]
    public void A_line_without_a_step_is_told_with_what_to_do(string place, string why)
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline("why", place).ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().Contain(why).And.Contain("do: ");
    }

    [Fact]
    public void A_step_of_a_scheme_is_shown_for_the_model_asked_for()
    {
        var crew = Bench.Workflow("tidewater.yaml");

        bench.Pipeline("why", $"{crew}:104").Out.Should().Contain("Line diver, step").And.Contain("of Winch diver: --model");
        bench.Pipeline("why", $"{crew}:104", "--model", "Winch diver").Out.Should().Contain("Winch diver, step").And.Contain("hook arm");
        bench.Pipeline("why", $"{crew}:104", "--model", "Winch divers").Err.Should().Contain("Did you mean Winch diver?");
    }

    [Fact]
    public void A_file_that_cannot_be_understood_is_told_what_to_mend_first()
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Pipeline("why", "buoy.yaml:19").ShowsNoTrace();

        ran.ExitCode.Should().Be(1);
        ran.Err.Should().Contain("slate undercoats").And.Contain("cannot be explained until");
    }
}
