package evenrise.model.readings;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A panel, a node or the supply as read at one visit. */
@FileRecord
public record SavedPlace(
        @Field(meaning = "The panel or node, or 'supply'", atLeast = 1)
        String place,

        @Field(meaning = "What was read phase by phase", byDefault = "[]")
        List<SavedPhase> phases,

        @Field(meaning = "Current of the neutral, rms", min = 0, max = 100_000, optional = true)
        OptionalDouble neutralAmps,

        @Field(meaning = "Whether the phases follow in the planned order", optional = true)
        Optional<Boolean> rotationRight,

        @Field(meaning = "Least insulation, measured dead, in megohm", min = 0, max = 1_000_000, optional = true)
        OptionalDouble insulationMegohm,

        @Field(meaning = "Whether it passed", optional = true)
        Optional<Boolean> passed,

        @Field(meaning = "Day on which it was read, as ISO 8601 has it", optional = true)
        Optional<String> date,

        @Field(meaning = "What it was read with", optional = true)
        Optional<String> meter)
        implements SavedPlaceBuilder.With {
    public SavedPlace {
        Contract.check(
                SavedPlace.class, place, phases, neutralAmps, rotationRight, insulationMegohm, passed, date, meter);
        phases = List.copyOf(phases);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static SavedPlaceBuilder builder() {
        return Defaults.into(SavedPlaceBuilder.unset(), SavedPlace.class);
    }
}
