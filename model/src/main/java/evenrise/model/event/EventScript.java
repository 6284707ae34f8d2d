package evenrise.model.event;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.List;

/** What happens to the system from outside, in the order of time. */
public record EventScript(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "What the script is called", atLeast = 1)
        String name,

        @Field(meaning = "What happens, in the order of time", atLeast = 1)
        List<ScriptEvent> events) {

    /** The format that this software reads. */
    public static final String FORMAT = "evenrise-script/1";

    public EventScript {
        Contract.check(EventScript.class, format, name, events);
        events = List.copyOf(events);
    }

    public EventScript(String name, List<ScriptEvent> events) {
        this(FORMAT, name, events);
    }
}
