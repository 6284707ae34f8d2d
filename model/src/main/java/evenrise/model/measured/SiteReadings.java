package evenrise.model.measured;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** What was read on site, in the order of the sheets. */
public record SiteReadings(List<PoleReading> poles, List<PlaceReading> places, List<DeviceReading> devices) {
    public static final SiteReadings NONE = new SiteReadings(List.of(), List.of(), List.of());

    public SiteReadings {
        poles = List.copyOf(poles);
        places = List.copyOf(places);
        devices = List.copyOf(devices);
    }

    public boolean isEmpty() {
        return poles.isEmpty() && places.isEmpty() && devices.isEmpty();
    }

    /** Both. */
    public SiteReadings and(SiteReadings other) {
        return new SiteReadings(
                joined(poles, other.poles), joined(places, other.places), joined(devices, other.devices));
    }

    /** Of one load. */
    public List<PoleReading> of(String load) {
        return poles.stream().filter(each -> each.load().equals(load)).toList();
    }

    /** Days on which something was read, the earliest first. */
    public List<String> dates() {
        TreeSet<String> dates = new TreeSet<>();
        poles.forEach(each -> each.visit().date().ifPresent(dates::add));
        places.forEach(each -> each.visit().date().ifPresent(dates::add));
        return List.copyOf(dates);
    }

    private static <T> List<T> joined(List<T> some, List<T> more) {
        List<T> all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }
}
