package evenrise.model;

import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;
import java.util.function.Consumer;

public final class GroupBuilder {
    private final evenrise.model.project.ShutdownGroupBuilder made;

    GroupBuilder(String id) {
        made = ShutdownGroup.builder().id(id).onEmergency(OnEmergency.DROP).samePanel(false);
    }

    public GroupBuilder drops() {
        made.onEmergency(OnEmergency.DROP);
        return this;
    }

    public GroupBuilder holds() {
        made.onEmergency(OnEmergency.HOLD);
        return this;
    }

    public GroupBuilder samePanel() {
        made.samePanel(true);
        return this;
    }

    /** Sets what has no method of its own here. */
    public GroupBuilder with(Consumer<evenrise.model.project.ShutdownGroupBuilder> more) {
        more.accept(made);
        return this;
    }

    public ShutdownGroup build() {
        return made.build();
    }
}
