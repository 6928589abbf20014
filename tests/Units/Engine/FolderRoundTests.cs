using MediatR;
using NodaTime;
using Pipeline.Engine;
using Pipeline.Tests.Units.Plugins;
using Serilog.Core;

namespace Pipeline.Tests.Units.Engine;

/// <summary>The host's rounds on a disk and a state that fail when told to.</summary>
public sealed class FolderRoundTests : IDisposable
{
    private const string Buoy =
        """
        batch: Buoy
        bench:
          zone: Europe/Lisbon
          sittings:
            - { days: mon-sun, from: 18:00, to: 21:00 }
        kits:
          - kit: Buoys
            models:
              - model: Buoy
                count: 1
                material: resin
                areas: { body: 9 cm² }
                route:
                  - clean: all
        """;

    private readonly string folder = Directory.CreateTempSubdirectory("round").FullName;
    private readonly FailingDisk disk = new();
    private readonly FailingState state = new();
    private readonly Heard heard = new();
    private readonly IMediator mediator;
    private FolderRound round;

    public FolderRoundTests()
    {
        var trade = TradeJoining.TradeOf(AllPlugins.Assemblies);
        var clock = new StillClock(Instant.FromUtc(2026, 11, 30, 17, 0));
        var parts = new EngineParts(disk, clock, Logger.None, new PluginShelf(() => (trade, [])), new NoReports());
        mediator = Composition.Engine(parts, listen =>
        {
            listen.Listens<FileArrived>(heard);
            listen.Listens<PlanWritten>(heard);
            listen.Listens<FolderTrouble>(heard);
        });
        round = NewRound();

        FolderRound NewRound() => new(folder, disk, state, mediator, clock);
        start = NewRound;
    }

    private readonly Func<FolderRound> start;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_file_is_planned_once()
    {
        Save("buoy.yaml", Buoy);

        await Rounds(3);

        heard.Said.Should().Equal("arrived buoy.yaml", "written buoy.yaml Planned");
        Results("buoy").Should().Equal("buoy.findings.json", "buoy.plan.json", "buoy.plan.md");
    }

    [Fact]
    public async Task A_start_after_a_stop_does_only_what_is_missing()
    {
        Save("one.yaml", Buoy);
        await Rounds(1);
        Save("two.yaml", Buoy);

        Restart();
        await Rounds(1);

        heard.Said.Should().Equal("arrived two.yaml", "written two.yaml Planned");
    }

    [Fact]
    public async Task Results_that_somebody_took_away_are_made_again()
    {
        Save("buoy.yaml", Buoy);
        await Rounds(1);
        File.Delete(Path.Combine(folder, "buoy.plan.md"));

        await Rounds(1);

        Results("buoy").Should().HaveCount(3);
    }

    [Fact]
    public async Task On_a_full_disk_the_results_wait_and_are_written_when_there_is_room()
    {
        Save("buoy.yaml", Buoy);
        disk.Full = true;
        await Rounds(3);

        Results("buoy").Should().BeEmpty();
        heard.Said.Should().Equal("arrived buoy.yaml", "trouble cannot write: no room");

        disk.Full = false;
        await Rounds(1);

        Results("buoy").Should().HaveCount(3);
        heard.Said.Should().HaveCount(3, "it was planned once").And.EndWith("written buoy.yaml Planned");
    }

    [Fact]
    public async Task A_disk_that_fills_up_between_two_results_leaves_whole_files_and_is_tried_again()
    {
        Save("buoy.yaml", Buoy);
        disk.Room = 1;
        await Rounds(1);
        Results("buoy").Should().ContainSingle();

        // and the power goes
        disk.Room = int.MaxValue;
        Restart();
        await Rounds(1);

        Results("buoy").Should().HaveCount(3);
    }

    [Fact]
    public async Task A_state_that_cannot_be_written_is_tried_again()
    {
        Save("buoy.yaml", Buoy);
        state.Fails = true;
        await Rounds(2);
        heard.Said.Should().NotContain("written buoy.yaml Planned");

        state.Fails = false;
        await Rounds(1);

        heard.Said.Should().EndWith("written buoy.yaml Planned");
    }

    [Fact]
    public async Task A_file_with_errors_loses_the_plan_of_its_older_version()
    {
        Save("buoy.yaml", Buoy);
        await Rounds(1);
        Save("buoy.yaml", Buoy.Replace("clean:", "claen:"));

        await Rounds(1);

        Results("buoy").Should().Equal("buoy.findings.json");
        heard.Said.Should().EndWith("written buoy.yaml Findings");
    }

    [Fact]
    public async Task Bytes_that_are_no_text_get_a_finding()
    {
        File.WriteAllBytes(Path.Combine(folder, "buoy.yaml"), [0, 1, 2]);

        await Rounds(2);

        heard.Said.Should().Equal("arrived buoy.yaml", "written buoy.yaml Findings");
    }

    [Fact]
    public async Task Of_two_files_with_the_same_results_the_second_is_left_out_and_told_once()
    {
        Save("buoy.yaml", Buoy);
        Save("buoy.yml", Buoy);

        await Rounds(2);

        heard.Said.Should().ContainSingle(said => said.StartsWith("trouble buoy.yml is left out"));
        heard.Said.Should().NotContain("arrived buoy.yml");
    }

    [Fact]
    public async Task Hidden_files_and_other_kinds_are_left_alone()
    {
        Save(".buoy.yaml", Buoy);
        Save("buoy.txt", Buoy);

        await Rounds(1);

        heard.Said.Should().BeEmpty();
    }

    [Fact]
    public async Task A_folder_that_is_away_is_told_once_and_taken_up_again()
    {
        Directory.Delete(folder);
        await Rounds(3);
        Directory.CreateDirectory(folder);
        Save("buoy.yaml", Buoy);
        await Rounds(1);

        heard.Said.Should().HaveCount(3).And.StartWith($"trouble the folder {folder} is not there").And.EndWith("written buoy.yaml Planned");
    }

    [Fact]
    public async Task What_a_crash_left_unfinished_is_swept_away_and_nothing_else()
    {
        Save(".buoy.plan.md.01.pipeline-unfinished", "half");
        Save("buoy.txt", "mine");

        await round.SweepLeftovers();

        Directory.GetFiles(folder).Should().ContainSingle().Which.Should().EndWith("buoy.txt");
    }

    [Fact]
    public async Task Being_told_to_stop_leaves_no_half_sought_plan()
    {
        Save("buoy.yaml", Buoy);

        await round.Run(new CancellationToken(canceled: true));

        Results("buoy").Should().BeEmpty();
    }

    private void Restart()
    {
        heard.Said.Clear();
        round = start();
    }

    private async Task Rounds(int count)
    {
        for (var i = 0; i < count; i++)
            await round.Run(CancellationToken.None);
    }

    private void Save(string name, string text) => File.WriteAllText(Path.Combine(folder, name), text);

    private IEnumerable<string> Results(string stem) =>
        Directory.GetFiles(folder).Select(file => Path.GetFileName(file))
            .Where(file => file.StartsWith($"{stem}.", StringComparison.Ordinal) && !file.EndsWith(".yaml", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    private sealed class Heard : INotificationHandler<FileArrived>, INotificationHandler<PlanWritten>, INotificationHandler<FolderTrouble>
    {
        public List<string> Said { get; } = [];

        public Task Handle(FileArrived notification, CancellationToken cancellationToken) => Hear($"arrived {notification.Name}");

        public Task Handle(PlanWritten notification, CancellationToken cancellationToken) => Hear($"written {notification.Name} {notification.Result}");

        public Task Handle(FolderTrouble notification, CancellationToken cancellationToken) => Hear($"trouble {notification.Message}");

        private Task Hear(string said)
        {
            Said.Add(said);
            return Task.CompletedTask;
        }
    }

    private sealed class FailingDisk : IDisk
    {
        private readonly RealDisk real = new();

        public bool Full { get; set; }

        /// <summary>How many more files it holds.</summary>
        public int Room { get; set; } = int.MaxValue;

        public FileRead Read(string path, int largestBytes) => real.Read(path, largestBytes);

        public Refusal? Write(string path, ReadOnlySpan<byte> bytes) =>
            Full || Room-- <= 0 ? new Refusal("cannot write: no room", "Make room.") : real.Write(path, bytes);

        public Refusal? Remove(string path) => real.Remove(path);

        public Refusal? MakeFolder(string path) => real.MakeFolder(path);
    }

    private sealed class FailingState : IHostState
    {
        private readonly Dictionary<string, HostEntry> entries = [];

        public bool Fails { get; set; }

        public HostEntry? Find(string folder, string name) => entries.GetValueOrDefault(folder + name);

        public void Record(HostEntry entry) =>
            entries[entry.Folder + entry.Name] = Fails ? throw new HostStateException("the state is full") : entry;
    }

    private sealed class NoReports : IBreakdowns
    {
        public string? Report(string during, Exception fault) => null;
    }
}
