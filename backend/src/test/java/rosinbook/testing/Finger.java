package rosinbook.testing;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;

/** Presses a control and stays on it, by touch or by mouse. */
public interface Finger {
    void press();

    /** Moves over the screen without leaving it. @param pixels towards the top */
    void dragUp(int pixels);

    void lift();

    /** A finger on the middle of a control that is in view. */
    static Finger onGlass(Locator control) {
        BoundingBox box = control.boundingBox();
        CDPSession session = control.page().context().newCDPSession(control.page());
        return new Finger() {
            private double y = box.y + box.height / 2;

            @Override
            public void press() {
                send("touchStart");
            }

            @Override
            public void dragUp(int pixels) {
                for (int moved = 0; moved < pixels; moved += 20) {
                    y -= 20;
                    send("touchMove");
                }
            }

            @Override
            public void lift() {
                send("touchEnd");
            }

            private void send(String type) {
                JsonArray points = new JsonArray();
                if (!type.equals("touchEnd")) {
                    JsonObject point = new JsonObject();
                    point.addProperty("x", box.x + box.width / 2);
                    point.addProperty("y", y);
                    points.add(point);
                }
                JsonObject event = new JsonObject();
                event.addProperty("type", type);
                event.add("touchPoints", points);
                session.send("Input.dispatchTouchEvent", event);
            }
        };
    }

    /** The mouse over the middle of a control. */
    static Finger onMouse(Locator control) {
        Page page = control.page();
        control.hover();
        BoundingBox box = control.boundingBox();
        return new Finger() {
            @Override
            public void press() {
                page.mouse().down();
            }

            @Override
            public void dragUp(int pixels) {
                page.mouse().move(box.x + box.width / 2, box.y + box.height / 2 - pixels);
            }

            @Override
            public void lift() {
                page.mouse().up();
            }
        };
    }
}
