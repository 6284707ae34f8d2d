package evenrise.model.project;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.Optional;

/** What some loads have where they state nothing: those that everything stated here fits; all loads where nothing is. */
@FileRecord
public record LoadDefault(
        @Field(meaning = "Loads meant", distinct = true, optional = true)
        Optional<List<String>> loads,

        @Field(meaning = "Shutdown group of the loads meant", optional = true)
        Optional<String> group,

        @Field(meaning = "Role of the loads meant", optional = true)
        Optional<Role> role,

        @Field(meaning = "System of the loads meant", optional = true)
        Optional<String> system,

        @Field(meaning = "Room of the loads meant: equipment.room", optional = true)
        Optional<String> room,

        @Field(meaning = "Rack of the loads meant", optional = true)
        Optional<String> rack,

        @Field(meaning = "Kind of the loads meant", optional = true)
        Optional<String> kind,

        @Field(
                meaning = "Fields of a load that those meant have unless they state them; of nested objects field by"
                        + " field; of entries that give a field the last counts")
        GivenFields gives)
        implements LoadDefaultBuilder.With {
    public LoadDefault {
        Contract.check(LoadDefault.class, loads, group, role, system, room, rack, kind, gives);
        loads = loads.map(List::copyOf);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static LoadDefaultBuilder builder() {
        return Defaults.into(LoadDefaultBuilder.unset(), LoadDefault.class).gives(GivenFields.NONE);
    }
}
