using NodaTime;
using Pipeline.Engine;

namespace Pipeline.Tests.Units.Engine;

public sealed class HostStateTests : IDisposable
{
    private static readonly Instant Monday = Instant.FromUtc(2026, 11, 30, 17, 0);
    private readonly string folder = Directory.CreateTempSubdirectory("state").FullName;

    private string StateFile => Path.Combine(folder, "state.db");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void What_was_recorded_is_found_by_the_next_start()
    {
        var entry = new HostEntry("/painting", "crew's \"best\".yaml", "AB12", HostResult.NoPlan, Monday);
        Open().Record(entry with { ContentHash = "old", Result = HostResult.Planned });
        Open().Record(entry);

        Open().Find("/painting", "crew's \"best\".yaml").Should().Be(entry);
        Open().Find("/painting", "other.yaml").Should().BeNull();
        Open().Find("/elsewhere", "crew's \"best\".yaml").Should().BeNull();
    }

    [Theory]
    [InlineData("this is no database at all, and long enough to be looked at as one by its first page header")]
    [InlineData("SQLite format 3\0 and then nothing that makes sense, which is worse than no database")]
    public void A_damaged_file_is_put_aside(string damage)
    {
        File.WriteAllText(StateFile, damage.PadRight(4096, 'x'));

        var state = SqliteHostState.Open(StateFile, out var putAside);

        putAside.Should().Be(StateFile + ".damaged-1");
        File.Exists(putAside).Should().BeTrue();
        state.Find("/painting", "crew.yaml").Should().BeNull();
    }

    [Fact]
    public void A_state_of_a_newer_program_is_left_alone()
    {
        Open();
        using (var newer = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={StateFile};Pooling=False"))
        {
            newer.Open();
            using var command = newer.CreateCommand();
            command.CommandText = "PRAGMA user_version = 99";
            command.ExecuteNonQuery();
        }

        var open = Open;

        open.Should().Throw<HostStateException>().WithMessage("*newer version*");
    }

    [Fact]
    public void A_folder_that_is_not_there_is_said_in_one_line()
    {
        var open = () => SqliteHostState.Open(Path.Combine(folder, "nowhere", "state.db"), out _);

        open.Should().Throw<HostStateException>().Which.Message.Should().StartWith("the host's state cannot be used:").And.NotContain("\n");
    }

    private SqliteHostState Open()
    {
        var state = SqliteHostState.Open(StateFile, out var putAside);
        putAside.Should().BeNull();
        return state;
    }
}
