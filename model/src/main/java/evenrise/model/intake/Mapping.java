package evenrise.model.intake;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.project.BoardType;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.TripCurve;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** How an equipment list is to be read, and what it is to be fed by. */
@FileRecord
public record Mapping(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "Sheet to read; every sheet with a header that is recognised when absent", optional = true)
        Optional<String> sheet,

        @Field(
                meaning = "Row of the headers, counted from 1; found when absent",
                min = 1,
                max = 1_000_000,
                optional = true)
        OptionalInt headerRow,

        @Field(meaning = "Headers by what they mean", optional = true)
        Optional<Columns> columns,

        @Field(meaning = "System of line conductors", byDefault = "\"three-phase\"")
        PhaseSystem system,

        @Field(meaning = "Nominal rms voltage to neutral", above = 0, max = 1000, byDefault = "120")
        double lineToNeutralVolts,

        @Field(meaning = "Nominal frequency", min = 1, max = 400, byDefault = "60")
        double frequencyHertz,

        @Field(
                meaning = "Usual rating of a branch breaker; 20, or 16 by IEC practice, when absent",
                above = 0,
                max = 63,
                optional = true)
        OptionalDouble breakerAmps,

        @Field(meaning = "Part of a breaker's rating that may be used", above = 0, max = 1, byDefault = "0.8")
        double continuousFraction,

        @Field(
                meaning =
                        "Instantaneous trip band of branch breakers; C by IEC practice, none by American, when absent",
                optional = true)
        Optional<TripCurve> curve,

        @Field(meaning = "Slots of a panel", min = 6, max = 1000, byDefault = "42")
        int panelSlots,

        @Field(
                meaning = "Outputs of the control board that is sketched where board_types names none",
                min = 1,
                max = 1000,
                byDefault = "12")
        int boardOutputs,

        @Field(meaning = "Body of rules that ratings go by; told by voltage and frequency when absent", optional = true)
        Optional<Practice> practice,

        @Field(
                meaning = "Whether life-safety equipment is placed, unswitched and each piece alone, instead of listed"
                        + " as outside the plan",
                byDefault = "false")
        boolean placesLifeSafety,

        @Field(
                meaning = "Kinds of control board that there are, as in a project; when absent one is sketched that is"
                        + " to be filled in",
                optional = true)
        List<BoardType> boardTypes,

        @Field(meaning = "Headers of columns that are not to be read", distinct = true, optional = true)
        List<String> ignore,

        @Field(
                meaning = "How each sheet is to be read, where they differ; then no other sheet is read",
                optional = true)
        List<SheetMapping> sheets,

        @Field(meaning = "Panels that feed what is in a room, where its row names none", optional = true)
        List<PanelOfRoom> panelsOfRooms,

        @Field(meaning = "Texts of cells that are to be read as others", optional = true)
        List<CellReading> readings,

        @Field(
                meaning = "How far a number of pieces may be from one that is said to be about so many",
                min = 0,
                max = 100,
                byDefault = "20")
        double aboutPercent)
        implements MappingBuilder.With {
    /** The format that this software reads. */
    public static final String FORMAT = "evenrise-mapping/1";

    public static final Mapping USUAL = builder().build();

    public Mapping {
        Contract.check(
                Mapping.class,
                format,
                sheet,
                headerRow,
                columns,
                system,
                lineToNeutralVolts,
                frequencyHertz,
                breakerAmps,
                continuousFraction,
                curve,
                panelSlots,
                boardOutputs,
                practice,
                placesLifeSafety,
                boardTypes,
                ignore,
                sheets,
                panelsOfRooms,
                readings,
                aboutPercent);
        boardTypes = List.copyOf(boardTypes);
        ignore = List.copyOf(ignore);
        sheets = List.copyOf(sheets);
        panelsOfRooms = List.copyOf(panelsOfRooms);
        readings = List.copyOf(readings);
    }

    /** How a sheet is to be read; empty where it is not. */
    public Optional<SheetMapping> of(String sheetName) {
        if (!sheets.isEmpty()) {
            return sheets.stream()
                    .filter(each -> each.sheet().equals(sheetName))
                    .findFirst();
        }
        return sheet.map(sheetName::equals).orElse(true)
                ? Optional.of(new SheetMapping(sheetName, headerRow, columns, ignore))
                : Optional.empty();
    }

    /** Of this sheet alone. */
    public Mapping only(String sheetName) {
        return sheets.isEmpty()
                ? withSheet(Optional.of(sheetName))
                : withSheets(sheets.stream()
                        .filter(each -> each.sheet().equals(sheetName))
                        .toList());
    }

    /** With further columns that are not to be read, whatever the sheet. */
    public Mapping withIgnored(List<String> headers) {
        List<SheetMapping> each = sheets.stream()
                .map(it -> new SheetMapping(it.sheet(), it.headerRow(), it.columns(), joined(it.ignore(), headers)))
                .toList();
        return with().ignore(joined(ignore, headers)).sheets(each).build();
    }

    private static List<String> joined(List<String> some, List<String> more) {
        return Stream.concat(some.stream(), more.stream()).distinct().toList();
    }

    /** The rating that most branch breakers get. */
    public double usualBreakerAmps() {
        return breakerAmps.orElse(practiceOfRatings() == Practice.IEC ? 16 : 20);
    }

    /** By whose rules ratings go. */
    public Practice practiceOfRatings() {
        return practice.orElseGet(() -> Practice.usualAt(lineToNeutralVolts, frequencyHertz));
    }

    /** Breakers to IEC 60898-1 are sold by band; those to UL 489 rarely say any of B, C and D. */
    public Optional<TripCurve> curveOfBreakers() {
        return curve.isPresent() || practiceOfRatings() == Practice.NEC ? curve : Optional.of(TripCurve.C);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static MappingBuilder builder() {
        return Defaults.into(MappingBuilder.unset(), Mapping.class).format(FORMAT);
    }
}
