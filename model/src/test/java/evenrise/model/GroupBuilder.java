package evenrise.model;

import evenrise.model.project.OnEmergency;
import evenrise.model.project.ShutdownGroup;

public final class GroupBuilder {
    private final String id;
    private OnEmergency onEmergency = OnEmergency.DROP;
    private boolean samePanel = false;

    GroupBuilder(String id) {
        this.id = id;
    }

    public GroupBuilder drops() {
        onEmergency = OnEmergency.DROP;
        return this;
    }

    public GroupBuilder holds() {
        onEmergency = OnEmergency.HOLD;
        return this;
    }

    public GroupBuilder samePanel() {
        samePanel = true;
        return this;
    }

    public ShutdownGroup build() {
        return new ShutdownGroup(id, onEmergency, samePanel);
    }
}
