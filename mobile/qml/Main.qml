import QtQuick
import QtQuick.Controls.Basic
import Oaklight

ApplicationWindow {
    id: window

    required property AppModel app

    function showDesk() {
        if (window.app.workspace === null) {
            desk.source = "";
        } else {
            desk.setSource("Desk.qml", {
                app: window.app,
                workspace: window.app.workspace
            });
        }
    }

    width: 1280
    height: 800
    minimumWidth: 320
    minimumHeight: 480
    title: "Oaklight"
    visible: true
    color: Theme.ground
    Component.onCompleted: showDesk()

    Connections {
        target: window.app

        function onWorkspaceChanged() {
            window.showDesk();
        }
    }

    Loader {
        id: desk

        anchors.fill: parent
    }

    NoTract {
        anchors.fill: parent
        visible: window.app.workspace === null && !window.app.opening
        app: window.app
    }

    Words {
        anchors.centerIn: parent
        visible: window.app.workspace === null && window.app.opening
        text: qsTr("Opening the tract \u2026")
        font.pixelSize: Theme.large
    }

    Intro {
        anchors.fill: parent
        visible: !window.app.settings.introSeen
        settings: window.app.settings
    }
}
