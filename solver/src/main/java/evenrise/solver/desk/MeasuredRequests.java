package evenrise.solver.desk;

import evenrise.model.contract.Field;
import java.util.List;
import java.util.OptionalDouble;

/** What windows ask of a plant as measured. */
public final class MeasuredRequests {
    private MeasuredRequests() {}

    /** A piece of a file is handed over; the first one takes the place of a file of that name. */
    public record Piece(
            @Field(meaning = "The file's own name, without those of folders", atLeast = 1)
            String name,

            @Field(meaning = "Its bytes in Base64, of so many as fit into one request")
            String bytes,

            @Field(meaning = "Whether the file begins with it", byDefault = "true")
            boolean first,

            @Field(meaning = "Whether the file ends with it", byDefault = "true")
            boolean last) {}

    /** What was recorded, and when. */
    public record Circumstances(
            @Field(meaning = "Panel or node that was recorded; the supply when empty", byDefault = "\"\"")
            String at,

            @Field(meaning = "System whose command was recorded", byDefault = "\"\"")
            String system,

            @Field(meaning = "Day of what states none, as 2026-03-14", byDefault = "\"\"")
            String day,

            @Field(
                    meaning =
                            "Use of the plant in which running currents were read: the scene that it becomes; none when"
                                    + " empty",
                    byDefault = "\"\"")
            String use) {}

    /** Which columns of the recording are what. */
    public record ColumnsSaid(
            @Field(meaning = "Columns that are read", atLeast = 1)
            List<ColumnSaid> columns,

            @Field(meaning = "Units of plain times that are one second", above = 0, max = 1e9, optional = true)
            OptionalDouble unitsPerSecond,

            @Field(meaning = "Amperes of one unit of the currents", above = 0, max = 1e6, optional = true)
            OptionalDouble ampsPerUnit) {}

    public record ColumnSaid(
            @Field(meaning = "Its header", atLeast = 1) String header,

            @Field(meaning = "time, A, B or C", atLeast = 1) String means) {}

    /** Somebody saw these loads in full use, and no others. */
    public record FullUse(
            @Field(meaning = "Loads, by id", byDefault = "[]")
            List<String> loads) {}

    /** The record of the plant as built is written. */
    public record AsBuilt(
            @Field(meaning = "Name of the folder, in that of the project", byDefault = "\"as-built\"")
            String name,

            @Field(meaning = "Revision on every page", byDefault = "\"as built\"")
            String revision,

            @Field(meaning = "Whether what no earlier run wrote there may be overwritten", byDefault = "false")
            boolean overwrites) {}
}
