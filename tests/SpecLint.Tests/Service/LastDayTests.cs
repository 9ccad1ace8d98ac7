using CsCheck;
using SpecLint.Book;
using SpecLint.Reading;
using SpecLint.Service;

namespace SpecLint.Tests.Service;

/// <summary>Use-by dates against an oracle that turns the leaves of a calendar one by one, with its own lengths of months.</summary>
public sealed class LastDayTests
{
    private static readonly Gen<CalendarDate> Days = Gen.Int[0, 60_000].Select(n => CalendarDate.Of(1970, 1, 1)!.Value.AddDays(n));

    private static CalendarDate Last(CalendarDate from, double days, params FrozenTime[] frozen) => LotCheck.LastDay(from, days, frozen, from.AddDays(5000));

    private static CalendarDate Day(int year, int month, int day) => CalendarDate.Of(year, month, day)!.Value;

    private static (int Year, int Month, int Day) Next((int Year, int Month, int Day) leaf)
    {
        bool leap = (leaf.Year % 4 == 0 && leaf.Year % 100 != 0) || leaf.Year % 400 == 0;
        int length = leaf.Month switch { 2 => leap ? 29 : 28, 4 or 6 or 9 or 11 => 30, _ => 31 };
        if (leaf.Day < length) return (leaf.Year, leaf.Month, leaf.Day + 1);
        return leaf.Month == 12 ? (leaf.Year + 1, 1, 1) : (leaf.Year, leaf.Month + 1, 1);
    }

    [Fact]
    public void The_day_made_is_day_1_and_every_leaf_of_the_calendar_counts() =>
        Gen.Select(Gen.Int[1999, 2104], Gen.Int[1, 12], Gen.Int[1, 28], Gen.Int[1, 120]).Sample((year, month, day, days) =>
        {
            var leaf = (year, month, day);
            for (int i = 1; i < days; i++) leaf = Next(leaf);
            Assert.Equal($"{leaf.year:0000}-{leaf.month:00}-{leaf.day:00}", Last(Day(year, month, day), days).ToString());
        });

    [Fact]
    public void A_time_in_the_freezer_moves_the_last_day_by_its_length() =>
        Gen.Select(Days, Gen.Int[2, 40], Gen.Int[0, 60], Gen.Int[0, 90]).Sample((from, days, start, length) =>
        {
            int begins = Math.Min(start, days - 1);
            var frozen = new FrozenTime(from.AddDays(begins), from.AddDays(begins + length), default);
            Assert.Equal(days - 1 + length, Last(from, days, frozen).DaysSince(from));
        });

    [Fact]
    public void Freezing_never_brings_the_last_day_forward_and_overlaps_count_once() =>
        Gen.Select(Days, Gen.Int[1, 30], Gen.Int[0, 40], Gen.Int[0, 40]).Sample((from, days, start, length) =>
        {
            var frozen = new FrozenTime(from.AddDays(start), from.AddDays(start + length), default);
            var once = Last(from, days, frozen);
            Assert.True(once >= Last(from, days));
            Assert.Equal(once, Last(from, days, frozen, frozen));
        });

    [Fact]
    public void What_is_frozen_now_stands_still_up_to_the_day_of_the_check()
    {
        var made = Day(2026, 11, 1);
        var open = new FrozenTime(Day(2026, 11, 3), null, default);
        Assert.Equal(Day(2026, 11, 23), LotCheck.LastDay(made, 5, [open], Day(2026, 11, 21)));
    }

    [Theory]
    [InlineData(2026, 1, 31, 2, "2026-02-01")]
    [InlineData(2024, 2, 28, 2, "2024-02-29")]
    [InlineData(2026, 2, 28, 2, "2026-03-01")]
    [InlineData(2100, 2, 28, 2, "2100-03-01")]
    [InlineData(2026, 12, 31, 7, "2027-01-06")]
    [InlineData(2026, 3, 28, 3, "2026-03-30")]
    [InlineData(2026, 10, 24, 3, "2026-10-26")]
    public void Month_ends_leap_days_and_the_change_of_the_clocks(int year, int month, int day, int days, string last) =>
        Assert.Equal(last, Last(Day(year, month, day), days).ToString());

    [Theory]
    [InlineData(0.2, 0)]
    [InlineData(1, 0)]
    [InlineData(1.5, 1)]
    [InlineData(7, 6)]
    public void A_part_of_a_day_counts_as_the_day_it_begins(double days, int later) =>
        Assert.Equal(later, Last(Day(2026, 11, 25), days).DaysSince(Day(2026, 11, 25)));
}
