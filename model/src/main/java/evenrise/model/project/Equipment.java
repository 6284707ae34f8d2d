package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.Optional;

/** What a breaker feeds, as its datasheet describes it. */
@FileRecord
public record Equipment(
        @Field(meaning = "Room that it heats", atLeast = 1, optional = true)
        Optional<String> room,

        @Field(
                meaning = "Part of what it draws that heats this room; the rest goes elsewhere",
                min = 0,
                max = 100,
                byDefault = "100")
        double heatPercent,

        @Field(meaning = "Where it is power amplifiers", optional = true)
        Optional<Amplifier> amplifier,

        @Field(meaning = "Where it is a motor", optional = true)
        Optional<Motor> motor)
        implements EquipmentBuilder.With {
    public Equipment {
        Contract.check(Equipment.class, room, heatPercent, amplifier, motor);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static EquipmentBuilder builder() {
        return Defaults.into(EquipmentBuilder.unset(), Equipment.class);
    }
}
