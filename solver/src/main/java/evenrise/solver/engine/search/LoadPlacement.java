package evenrise.solver.engine.search;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Setting;
import org.optaplanner.core.api.domain.entity.PlanningEntity;
import org.optaplanner.core.api.domain.variable.PlanningVariable;

/** Where one load sits and what switches it; either is null while the load has found no room. */
@PlanningEntity
public class LoadPlacement {
    private int load;

    @PlanningVariable(valueRangeProviderRefs = "places", nullable = true)
    private Place place;

    @PlanningVariable(valueRangeProviderRefs = "outputs", nullable = true)
    private Output output;

    /** Counts only on outputs that have times of their own. */
    @PlanningVariable(valueRangeProviderRefs = "settings", nullable = true)
    private Setting time;

    LoadPlacement() {}

    LoadPlacement(int load, Place place, Output output, Setting time) {
        this.load = load;
        this.place = place;
        this.output = output;
        this.time = time;
    }

    int load() {
        return load;
    }

    Place getPlace() {
        return place;
    }

    void setPlace(Place place) {
        this.place = place;
    }

    Output getOutput() {
        return output;
    }

    void setOutput(Output output) {
        this.output = output;
    }

    Setting getTime() {
        return time;
    }

    void setTime(Setting time) {
        this.time = time;
    }
}
